package org.thumbseal.cli;

import java.util.List;
import org.thumbseal.link.PortDescription;

/** Two columns, the first as wide as its widest entry. */
record Columns(int width) {

  static Columns of(List<PortDescription> ports) {
    return new Columns(ports.stream().mapToInt(port -> port.path().length()).max().orElse(0));
  }

  String line(String first, String second) {
    return first + " ".repeat(Math.max(width - first.length(), 0)) + "  " + second;
  }
}

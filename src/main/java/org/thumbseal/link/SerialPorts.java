package org.thumbseal.link;

import java.util.List;

/** The serial ports of this machine. */
@FunctionalInterface
public interface SerialPorts {

  /** Those there are now, as far as the system tells within a few seconds. */
  List<PortDescription> list();

  /** Asks the system. */
  static SerialPorts system() {
    return new SystemPorts();
  }
}

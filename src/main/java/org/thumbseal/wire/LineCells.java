package org.thumbseal.wire;

import java.util.Optional;

/** Where in a line the numbers stand. */
@FunctionalInterface
interface LineCells {
  /** What was found in a line, blanks taken off. */
  record Cells(String pressure, Optional<String> time) {}

  /** The cells of a line that fits as a whole; empty for every other. */
  Optional<Cells> of(String line);
}

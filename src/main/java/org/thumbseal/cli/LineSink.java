package org.thumbseal.cli;

import java.io.Closeable;
import java.io.IOException;
import org.thumbseal.simulate.TimedLine;

/** Where simulated lines go. */
interface LineSink extends Closeable {
  /** Takes the next line; it may stay in a buffer. */
  void write(TimedLine line) throws IOException;

  /** Lets go of what is in the buffer. */
  void flush() throws IOException;
}

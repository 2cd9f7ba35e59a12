package org.thumbseal.wire;

import java.util.function.Consumer;

/**
 * Cuts a stream of bytes into lines at LF, dropping one CR before it, whatever the size of the
 * chunks it comes in.
 *
 * <p>Memory is bounded: of a line without end only the first {@value #KEPT_OF_A_LONG_LINE} bytes
 * are kept, enough to see that it is too long. What stands behind the last LF is state, not a line.
 */
public final class LineAssembler {
  static final int KEPT_OF_A_LONG_LINE = 256;

  private final Consumer<String> lines;
  private final StringBuilder current = new StringBuilder();

  /**
   * Makes an empty assembler.
   *
   * @param lines takes each whole line as a text of one-byte characters, without its end
   */
  public LineAssembler(Consumer<String> lines) {
    this.lines = lines;
  }

  /** Takes the next bytes of the stream. */
  public void accept(byte[] buffer, int offset, int length) {
    for (int i = offset; i < offset + length; i++) {
      accept((char) (buffer[i] & 0xFF));
    }
  }

  private void accept(char octet) {
    if (octet == '\n') {
      end();
    } else if (current.length() < KEPT_OF_A_LONG_LINE) {
      current.append(octet);
    }
  }

  private void end() {
    int last = current.length() - 1;
    if (last >= 0 && current.charAt(last) == '\r') {
      current.setLength(last);
    }
    String line = current.toString();
    current.setLength(0);
    lines.accept(line);
  }
}

package org.thumbseal.capture;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Lines of a stream, ended by LF or CRLF, in bounded memory. What stands behind the last end is not
 * a line: a capture that was cut off by a power loss ends like that.
 */
final class WholeLines {
  private final InputStream in;
  private final int longest;

  /** Reads from a buffered stream; of a longer line one character more than this is kept. */
  WholeLines(InputStream in, int longest) {
    this.in = in;
    this.longest = longest;
  }

  /** The next whole line without its end. */
  Optional<String> next() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(80);
    for (int octet = in.read(); octet >= 0; octet = in.read()) {
      if (octet == '\n') {
        return Optional.of(withoutReturn(line.toString(StandardCharsets.UTF_8)));
      }
      if (line.size() <= longest) {
        line.write(octet);
      }
    }
    return Optional.empty();
  }

  private static String withoutReturn(String line) {
    return line.endsWith("\r") ? line.substring(0, line.length() - 1) : line;
  }
}

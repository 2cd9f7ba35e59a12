package org.thumbseal.feed;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Text of any kind as one level of a topic, or one segment of a path: percent-encoded in UTF-8, all
 * but the unreserved characters of RFC 3986 section 2.3. So no wildcard ({@code +}, {@code #}) and
 * no further level gets into a topic.
 */
final class SafeName {
  private static final String UNRESERVED = "-._~";

  private SafeName() {}

  static String of(String text) {
    // A full stop, or two, would be a step in a path.
    boolean steps = text.equals(".") || text.equals("..");
    return steps ? text.replace(".", "%2E") : encoded(text);
  }

  private static String encoded(String text) {
    StringBuilder out = new StringBuilder();
    for (byte octet : text.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (octet & 0xff);
      if (isUnreserved(c)) {
        out.append(c);
      } else {
        out.append(String.format(Locale.ROOT, "%%%02X", (int) c));
      }
    }
    return out.toString();
  }

  private static boolean isUnreserved(char c) {
    return (c >= 'a' && c <= 'z')
        || (c >= 'A' && c <= 'Z')
        || (c >= '0' && c <= '9')
        || UNRESERVED.indexOf(c) >= 0;
  }
}

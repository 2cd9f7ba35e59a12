package org.thumbseal.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Style sheets and scripts that go into the pages as they are. */
final class Styles {
  private Styles() {}

  static String text(String name) {
    try (InputStream in = Objects.requireNonNull(Styles.class.getResourceAsStream(name))) {
      return "\n" + new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r", "");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

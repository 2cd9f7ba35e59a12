package org.thumbseal.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program that writes the results. */
public final class Software {
  /** Its name. */
  public static final String NAME = "thumbseal";

  /** Its version. */
  public static final String VERSION = read();

  private Software() {}

  private static String read() {
    try (InputStream in = Software.class.getResourceAsStream("version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version", "unknown");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

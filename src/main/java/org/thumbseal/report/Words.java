package org.thumbseal.report;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;

/** All words of the pages, by key; they stand in one file. */
final class Words {
  private static final Properties WORDS = load();

  private Words() {}

  private static Properties load() {
    try (var in =
        new InputStreamReader(
            Objects.requireNonNull(Words.class.getResourceAsStream("words.properties")),
            StandardCharsets.UTF_8)) {
      Properties words = new Properties();
      words.load(in);
      return words;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The words of a key, with values put in as {@link String#format} does. */
  static String text(String key, Object... values) {
    String words = WORDS.getProperty(key);
    if (words == null) {
      throw new IllegalArgumentException("no words for " + key);
    }
    return values.length == 0 ? words : String.format(Locale.ROOT, words, values);
  }

  /** The words of a key that a document named; its own word where there are none. */
  static String of(String family, String code) {
    return WORDS.getProperty(family + "." + code, code);
  }

  /** All keys. */
  static Set<String> keys() {
    return WORDS.stringPropertyNames();
  }
}

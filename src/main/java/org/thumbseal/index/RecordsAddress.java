package org.thumbseal.index;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Which base holds the records.
 *
 * @param url for JDBC where it is a server; may hold a password, and must not be shown
 * @param file of SQLite; absent for a server
 */
public record RecordsAddress(String url, Optional<Path> file) {
  /** The file in a results directory that is the base where none is named. */
  public static final String FILE = "records.sqlite";

  private static final String SERVER = "jdbc:postgresql:";
  private static final String SQLITE = "jdbc:sqlite:";

  /** The base in a results directory. */
  public static RecordsAddress in(Path results) {
    return of(results.resolve(FILE));
  }

  /** A base in this file. */
  public static RecordsAddress of(Path file) {
    return new RecordsAddress(SQLITE + file, Optional.of(file));
  }

  /**
   * What a person says: {@code jdbc:postgresql://HOST/BASE}, {@code jdbc:sqlite:FILE} or a file.
   *
   * @throws RecordsException if it is none of them; the message does not repeat it, for a password
   *     may stand in it
   */
  public static RecordsAddress parse(String text) throws RecordsException {
    if (text.startsWith(SERVER)) {
      return new RecordsAddress(requireServer(text), Optional.empty());
    }
    String file = text.startsWith(SQLITE) ? text.substring(SQLITE.length()) : text;
    if (file.isBlank() || file.startsWith("jdbc:") || file.contains("://")) {
      throw RecordsException.mistake(
          "--records: say jdbc:postgresql://HOST/BASE, or a file for SQLite");
    }
    try {
      return of(Path.of(file));
    } catch (InvalidPathException e) {
      throw RecordsException.mistake("--records: this cannot be the name of a file");
    }
  }

  /** The driver would take what stands before an @ for a part of the host, and say it in errors. */
  private static String requireServer(String text) throws RecordsException {
    String place = withoutOptions(text);
    if (place.contains("@")) {
      throw RecordsException.mistake(
          "--records: put the user behind the base, ?user=NAME, and the password into the file that"
              + " PGPASSFILE names");
    }
    if (!place.matches("jdbc:postgresql:(//[^/]*/)?[^/]*")) {
      throw RecordsException.mistake("--records: say jdbc:postgresql://HOST:PORT/BASE");
    }
    return text;
  }

  private static String withoutOptions(String text) {
    int options = text.indexOf('?');
    return options < 0 ? text : text.substring(0, options);
  }

  /** Fit to be shown: options, where a password may stand, are left out. */
  public String shown() {
    return file.map(Path::toString).orElse(withoutOptions(url));
  }

  /** Whether it is shared by computers. */
  public boolean isServer() {
    return file.isEmpty();
  }

  /** A URL of a server never shows its password, wherever the record is printed. */
  @Override
  public String toString() {
    return shown();
  }
}

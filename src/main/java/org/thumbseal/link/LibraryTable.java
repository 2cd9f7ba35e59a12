package org.thumbseal.link;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.thumbseal.seal.Sha256;

/** The native files this program was built with, by their names in the jar, with their SHA-256. */
final class LibraryTable {
  private static final String RESOURCE = "native-libraries.sha256";

  private final Map<String, String> digests = new TreeMap<>();

  private LibraryTable(String text) {
    text.lines()
        .filter(line -> !line.startsWith("#"))
        .map(line -> line.split(" {2}", 2))
        .forEach(parts -> digests.put(parts[1], parts[0]));
  }

  static LibraryTable ofProgram() {
    try (InputStream in =
        Objects.requireNonNull(LibraryTable.class.getResourceAsStream(RESOURCE), RESOURCE)) {
      return new LibraryTable(new String(in.readAllBytes(), StandardCharsets.US_ASCII));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Map<String, String> digests() {
    return Map.copyOf(digests);
  }

  /** Those for one operating system, one for each processor. */
  List<String> names(String system) {
    return digests.keySet().stream().filter(name -> name.startsWith(system + "/")).toList();
  }

  boolean holds(String name, byte[] content) {
    return Sha256.hex(content).equals(digests.get(name));
  }

  /** Whether it is one of them, whichever. */
  boolean holds(byte[] content) {
    return digests.containsValue(Sha256.hex(content));
  }
}

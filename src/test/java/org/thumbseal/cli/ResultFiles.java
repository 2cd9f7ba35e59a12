package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ObjectNode;

/** Looks into a result directory as a person would. */
record ResultFiles(Path directory) {

  /** The sealed documents, by name. */
  List<Path> documents() throws IOException {
    return files(".json").stream()
        .filter(f -> !f.getFileName().toString().equals("head.json"))
        .toList();
  }

  /** All files whose name ends so, by name. */
  List<Path> files(String ending) throws IOException {
    if (!Files.exists(directory)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(directory)) {
      return all.filter(f -> f.getFileName().toString().endsWith(ending)).sorted().toList();
    }
  }

  /** The capture beside a document. */
  static Path capture(Path document) {
    return document.resolveSibling(
        document.getFileName().toString().replaceFirst("\\.json$", ".log"));
  }

  static ObjectNode read(Path document) throws Exception {
    return JsonGate.read(document);
  }

  static String verdict(Path document) throws Exception {
    return read(document).path("verdict").stringValue();
  }

  /** The codes of the reasons. */
  static List<String> reasons(Path document) throws Exception {
    return read(document)
        .path("reasons")
        .valueStream()
        .map(reason -> reason.path("code").stringValue())
        .toList();
  }
}

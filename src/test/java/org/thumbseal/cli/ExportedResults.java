package org.thumbseal.cli;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.KeyStore;
import tools.jackson.databind.node.ObjectNode;

/** A result directory to export from, and what comes out as another library reads it. */
final class ExportedResults {
  final Path key;
  final Path results;

  ExportedResults(Path folder) throws Exception {
    key = folder.resolve("keys/k.pem");
    results = folder.resolve("results");
    KeyStore.create(key);
  }

  /** Stores tests in this order; the number of each is its minute. */
  void store(int... numbers) throws Exception {
    for (int number : numbers) {
      store(number, "SP-" + number);
    }
  }

  Path store(int number, String asset) throws Exception {
    ObjectNode document = ExampleDocument.unsealed(number);
    document.putObject("asset").put("id", asset);
    return store(document);
  }

  Path store(ObjectNode document) throws Exception {
    try (Archive archive = Archive.open(results, KeyStore.load(key).key())) {
      return archive.store(document, new byte[] {'#'}).document();
    }
  }

  CommandRun amend(Path result, Object... said) {
    return CommandRun.of(
        Stream.concat(Stream.of("amend", "--key", key, result), Stream.of(said)).toArray());
  }

  CommandRun export(Object... more) {
    return exportFrom(List.of(results), more);
  }

  CommandRun exportFrom(List<Path> paths, Object... more) {
    return CommandRun.of(
        Stream.of(Stream.of("export", "--key", key), paths.stream(), Stream.of(more))
            .flatMap(s -> s)
            .toArray());
  }

  /** The rows by Apache Commons CSV, which takes nothing that is not RFC 4180. */
  static List<CSVRecord> rows(String csv, char separator) throws Exception {
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(separator)
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    try (var parser = format.parse(new StringReader(csv))) {
      return parser.getRecords();
    }
  }

  static List<String> column(String csv, String name) throws Exception {
    return rows(csv, ',').stream().map(row -> row.get(name)).toList();
  }

  static void spoil(Path document) throws Exception {
    String text = Files.readString(document);
    Files.writeString(document, text.replace("88.41", "98.41"));
  }
}

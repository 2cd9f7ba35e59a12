package org.thumbseal.index;

import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.Canonical;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;

/**
 * How long an index of many results takes: to be made by two benches at once, to be brought up to
 * date, to answer; and whether the one that grew equals the one made anew, and that of the other
 * kind of base. Each step is a process of its own, with {@value IndexProcess#MEMORY}.
 *
 * <pre>
 * java -cp target/test-classes:target/classes:$(cat target/classpath) \
 *     org.thumbseal.index.IndexStudy 200000 [SQLITE|POSTGRESQL [rows]]
 * </pre>
 *
 * <p>With {@code rows} neither files nor seals are made, which takes most of the time: then it only
 * shows how fast the commands answer.
 */
@SuppressWarnings("SystemOut") // It is run by hand and prints a table.
final class IndexStudy {
  private final int documents;
  private final Path folder;
  private final Path trust;
  private final Path key;
  private final ManyResults results;
  private final List<Path> benches = new ArrayList<>();

  private IndexStudy(int documents, Path folder, boolean sealed) throws Exception {
    this.documents = documents;
    this.folder = folder;
    key = folder.resolve("key/k.pem");
    SigningKey signing = KeyStore.create(key).key();
    trust = folder.resolve("trust.jwk");
    Files.writeString(trust, Canonical.text(signing.verifyingKey().jwk()));
    results = new ManyResults(documents, signing);
    if (!sealed) {
      return;
    }
    timed(
        "documents made and sealed",
        documents,
        () -> {
          benches.add(results.write(folder, 0));
          benches.add(results.write(folder, 1));
        });
  }

  /** How many documents; then, if wanted, the kind of base. */
  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("index-study");
    try {
      boolean sealed = args.length < 3;
      IndexStudy study = new IndexStudy(Integer.parseInt(args[0]), folder, sealed);
      Map<String, String> last = Map.of();
      for (Bases kind :
          args.length > 1 ? List.of(Bases.valueOf(args[1])) : List.of(Bases.values())) {
        System.out.println(kind);
        if (!sealed) {
          study.ask(kind.fresh(folder));
          continue;
        }
        Map<String, String> rows = study.run(kind.fresh(folder));
        if (!last.isEmpty()) {
          say("the same rows in both bases", rows.equals(last));
        }
        last = rows;
      }
    } finally {
      new ProcessBuilder("rm", "-rf", folder.toString()).start().waitFor();
    }
  }

  private Map<String, String> run(RecordsAddress address) throws Exception {
    String url = address.file().map(Path::toString).orElse(address.url());
    timed("taken in, two benches at once", documents, () -> takeIn(url));
    Map<String, String> grown = RowSums.of(address, 2 * documents);
    commands(url);
    oneMore(url);
    asked(address);
    if (address.file().isPresent()) {
      System.out.printf("%-45s %d MiB%n", "file", Files.size(address.file().get()) >> 20);
    }
    timed("made anew from both", documents, () -> command("records rebuild", url));
    Map<String, String> anew = RowSums.of(address, 2 * documents);
    say("made anew = grown: " + grown, anew.equals(grown));
    return anew;
  }

  private void commands(String url) throws Exception {
    for (String command : List.of("due", "history SP-0500", "fleet", "records show")) {
      command(command, url);
    }
  }

  /** How fast an index answers that holds what so many documents would say. */
  private void ask(RecordsAddress address) throws Exception {
    benches.clear();
    timed("rows written", documents, () -> benches.add(results.pretend(folder, address)));
    commands(address.file().map(Path::toString).orElse(address.url()));
    asked(address);
  }

  private void takeIn(String url) throws Exception {
    List<IndexProcess> processes = new ArrayList<>();
    for (Path bench : benches) {
      processes.add(IndexProcess.start("add", url, bench, trust));
    }
    for (IndexProcess process : processes) {
      String said = process.line() + " " + process.line() + " " + process.line();
      System.out.println("  " + said + ", exit code " + process.awaitEnd());
    }
  }

  /** Another process, as it is typed; what it says goes nowhere but for its size. */
  private void command(String words, String url) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                IndexProcess.MEMORY,
                "-cp",
                System.getProperty("java.class.path"),
                "org.thumbseal.cli.Main"));
    command.addAll(List.of(words.split(" ", -1)));
    command.addAll(List.of("--results", benches.get(0).toString(), "--records", url));
    command.addAll(List.of("--key", key.toString()));
    if (words.endsWith("rebuild")) {
      command.add(benches.get(1).toString());
    }
    long start = System.nanoTime();
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    StringWriter said = new StringWriter();
    try (Reader reader = new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8)) {
      reader.transferTo(said);
    }
    int code = process.waitFor();
    System.out.printf(
        Locale.ROOT,
        "thumbseal %-35s %9.3f s, exit code %d, %d lines%n",
        words,
        (System.nanoTime() - start) / 1e9,
        code,
        said.toString().lines().count());
    if (code > 1) {
      throw new IllegalStateException(words + " ended with " + code + ": " + said);
    }
  }

  /** What a bench does after each test. */
  private void oneMore(String url) throws Exception {
    SigningKey signing = KeyStore.load(key).key();
    Path stored;
    try (Archive archive = Archive.open(benches.get(0), signing)) {
      var document = new ManyResults(documents, signing).document(2 * documents + 2);
      stored = archive.store(document, new byte[] {'#'}).document();
    }
    command("records add", url);
    // Away again, so that all is as it was.
    Files.delete(stored);
    command("records add", url);
  }

  private static void asked(RecordsAddress address) throws Exception {
    try (Records records = Records.open(address, r -> {})) {
      timed("  all pumps with their latest", 1, records::assets);
      timed("  tests of one", 1, () -> records.tests("SP-0500"));
      timed(
          "  last verdicts", 1, () -> records.lastVerdicts(Instant.parse("2027-01-01T00:00:00Z")));
    }
  }

  private static void say(String what, boolean holds) {
    System.out.println(what + ": " + holds);
  }

  /** Something that is timed. */
  @FunctionalInterface
  private interface Timed {
    void run() throws Exception;
  }

  private static void timed(String what, int many, Timed work) throws Exception {
    long start = System.nanoTime();
    work.run();
    double seconds = (System.nanoTime() - start) / 1e9;
    String rate = many > 1 ? String.format(Locale.ROOT, "%8.0f/s", many / seconds) : "";
    System.out.printf(Locale.ROOT, "%-45s %9.3f s %s%n", what, seconds, rate);
  }
}

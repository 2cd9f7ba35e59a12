package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsAddress;
import org.thumbseal.index.RecordsException;
import org.thumbseal.index.Refreshed;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where records are read: the results directory, its index, and whose seals are trusted. */
final class RecordsOptions {
  private static final int MOST_TOLD = 5;

  @Option(
      names = "--results",
      paramLabel = "DIR",
      description = "the directory with the sealed results. Default: results")
  private Path results = Path.of("results");

  @Mixin private RecordsOption base = new RecordsOption();
  @Mixin private KeyOption key = new KeyOption();
  @Mixin private TrustOption trust = new TrustOption();

  Path results() {
    return results;
  }

  TrustStore trusted() {
    return trust.trusted(key.file());
  }

  /** Opens the index as it is. */
  Records open(PrintWriter err) {
    if (!Files.isDirectory(results)) {
      throw Failure.usage(results + ": there is no such directory; name one with --results DIR");
    }
    try {
      Optional<RecordsAddress> named = base.address();
      return named.isPresent()
          ? Records.open(named.get(), line -> say(err, line))
          : Records.openIn(results, line -> say(err, line));
    } catch (RecordsException e) {
      throw RecordsOption.failure(e);
    }
  }

  /**
   * Opens the index and brings it up to date, so that whatever is read from it is what lies in the
   * directory; files that are kept out are told.
   */
  Records openRefreshed(PrintWriter err) {
    Records records = open(err);
    IngestLine line = new IngestLine(err);
    records.tellProgress(line);
    try {
      Refreshed refreshed = records.refresh(results, trusted());
      line.clear();
      tell(refreshed, err);
      return records;
    } catch (RecordsException e) {
      line.clear();
      close(records);
      throw RecordsOption.failure(e);
    }
  }

  /** Asks an index. */
  @FunctionalInterface
  interface Question<T> {
    T ask(Records records) throws RecordsException;
  }

  /** Opens the index, brings it up to date, asks, and closes it. */
  <T> T ask(PrintWriter err, Question<T> question) {
    try (Records open = openRefreshed(err)) {
      return question.ask(open);
    } catch (RecordsException e) {
      throw RecordsOption.failure(e);
    }
  }

  /** Says on standard error what was kept out, and what else there is to know. */
  static void tell(Refreshed refreshed, PrintWriter err) {
    refreshed.remarks().forEach(line -> say(err, line));
    refreshed.keptOut().stream()
        .limit(MOST_TOLD)
        .forEach(out -> say(err, out.file() + ": is not counted: " + out.reason()));
    int more = refreshed.keptOut().size() - MOST_TOLD;
    if (more > 0) {
      say(err, more + " more are not counted; see: thumbseal records show");
    }
  }

  static void close(Records records) {
    try {
      records.close();
    } catch (RecordsException e) {
      throw RecordsOption.failure(e);
    }
  }

  private static void say(PrintWriter err, String text) {
    err.println("thumbseal: " + Printable.line(text));
  }
}

package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.index.Refreshed;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Work on an index that brings documents in: does it, and says what came of it.
 *
 * @param spec of the command
 * @param options of the command
 * @param more directories besides that of the options
 */
record RecordsWork(CommandSpec spec, RecordsOptions options, List<Path> more) {
  /** One of the ways to bring documents in. */
  @FunctionalInterface
  interface Way {
    Refreshed take(Records records, List<Path> directories, TrustStore trust)
        throws RecordsException;
  }

  /** Does it; the exit code. */
  int run(Way way) {
    PrintWriter err = spec.commandLine().getErr();
    Records records = options.open(err);
    IngestLine line = new IngestLine(err);
    records.tellProgress(line);
    try {
      List<Path> directories =
          Stream.concat(Stream.of(options.results()), more.stream()).distinct().toList();
      Refreshed refreshed = way.take(records, directories, options.trusted());
      line.clear();
      RecordsOptions.tell(refreshed, err);
      return told(refreshed, records.summary().base());
    } catch (RecordsException e) {
      line.clear();
      throw RecordsOption.failure(e);
    } finally {
      RecordsOptions.close(records);
    }
  }

  private int told(Refreshed refreshed, String base) {
    List<String> said = new ArrayList<>();
    said.add(refreshed.added() + " taken in");
    if (refreshed.removed() > 0) {
      said.add(refreshed.removed() + " taken out");
    }
    if (!refreshed.keptOut().isEmpty()) {
      said.add(refreshed.keptOut().size() + " kept out");
    }
    spec.commandLine().getOut().println(base + ": " + String.join(", ", said));
    boolean good = refreshed.keptOut().isEmpty() && refreshed.remarks().isEmpty();
    return good ? ExitCode.GOOD : ExitCode.NOT_PASSED;
  }
}

package org.thumbseal.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.index.RecordsAddress;
import org.thumbseal.index.RecordsException;
import picocli.CommandLine.Option;

/** Which base holds the records index. */
final class RecordsOption {
  @Option(
      names = "--records",
      paramLabel = "URL|FILE",
      description =
          "the records index: a file for SQLite, or jdbc:postgresql://HOST/BASE?user=NAME for one"
              + " that computers share; its password from the file that PGPASSFILE names. Default:"
              + " records.sqlite in the results directory")
  private @Nullable String url;

  /** The base that was named, if one was. */
  Optional<RecordsAddress> address() {
    try {
      return url == null ? Optional.empty() : Optional.of(RecordsAddress.parse(url));
    } catch (RecordsException e) {
      throw failure(e);
    }
  }

  static Failure failure(RecordsException e) {
    String message = String.valueOf(e.getMessage());
    return e.isMistake() ? Failure.usage(message) : Failure.machine(message);
  }
}

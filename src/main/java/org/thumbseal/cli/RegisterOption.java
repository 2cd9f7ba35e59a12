package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.grade.Criteria;
import org.thumbseal.link.HostClock;
import org.thumbseal.register.KeptRegister;
import org.thumbseal.register.RegisterRefused;
import picocli.CommandLine.Option;

/** Which list of pumps is kept. */
final class RegisterOption {
  @Option(
      names = "--register",
      paramLabel = "FILE",
      description =
          "list of pumps (CSV), as 'thumbseal register' reads it. For a test jar, rated flow and"
              + " criteria of the pump come from it, where no other option says them")
  private @Nullable Path file;

  /**
   * The register; empty where none is named. All mistakes in it are said, and end the command.
   *
   * @param said criteria that were given by option
   */
  Optional<KeptRegister> read(Optional<Criteria> said, PrintWriter err) {
    Path given = file;
    if (given == null) {
      return Optional.empty();
    }
    RegisterWarnings warnings = new RegisterWarnings(given, err);
    try {
      HostClock clock = HostClock.system();
      KeptRegister kept = new KeptRegister(given, () -> today(clock), said);
      warnings.warn(kept.register());
      return Optional.of(kept);
    } catch (RegisterRefused e) {
      throw warnings.refused(e);
    }
  }

  /** The day where this computer stands. */
  static LocalDate today(HostClock clock) {
    return LocalDate.ofInstant(clock.wall(), ZoneId.systemDefault());
  }
}

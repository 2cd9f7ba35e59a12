package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.history.Pump;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.register.KeptRegister;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.register.Status;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What the commands about the past of pumps have in common. */
final class HistoryOptions {
  @Mixin private RecordsOptions records = new RecordsOptions();
  @Mixin private RegisterOption register = new RegisterOption();

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "as of this day (2026-03-02), tests of later days left out; default: today")
  private @Nullable LocalDate day;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE.html",
      description = "write a page instead")
  private @Nullable Path output;

  RecordsOptions records() {
    return records;
  }

  Optional<Register> register(PrintWriter err) {
    return register.read(Optional.empty(), err).map(KeptRegister::register);
  }

  /** The calendar of this place. */
  ZoneId zone() {
    return ZoneId.systemDefault();
  }

  /** Now, or the end of the day that was named. */
  Instant today() {
    LocalDate named = day;
    return named == null
        ? HostClock.system().wall()
        : named.atTime(LocalTime.MAX).atZone(zone()).toInstant();
  }

  Optional<Path> output() {
    return Optional.ofNullable(output);
  }

  /** Writes a page where it was asked for, and says where it is. */
  void write(Path file, String html, PrintWriter out) {
    Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
    Path name = Optional.ofNullable(file.getFileName()).orElseThrow(() -> noFile(file));
    if (!name.toString().endsWith(".html")) {
      throw noFile(file);
    }
    Path written = ReportFolder.at(folder).write(name.toString(), html);
    out.println(Printable.line(written.toString()));
  }

  private static Failure noFile(Path file) {
    return Failure.usage(file + ": is no name for a page; say -o FILE.html");
  }

  static Pump pump(RegisteredAsset asset) {
    return new Pump(
        asset.id(),
        asset.label().description(),
        asset.label().location(),
        asset.status() == Status.IN_USE);
  }
}

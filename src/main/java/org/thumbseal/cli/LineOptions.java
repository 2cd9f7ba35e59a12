package org.thumbseal.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.wire.PlainLines;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a sensor that only prints numbers cannot say of itself. */
final class LineOptions {
  private static final String ID = "[!-~&&[^,*]]{1,32}";

  @Mixin private FormatOption lines = new FormatOption();

  @Option(
      names = "--sensor",
      paramLabel = "ID",
      description = "id of a sensor that does not say who it is, so that its calibration is used")
  private @Nullable String sensor;

  /** The same settings with what is said here. */
  GradingSettings into(GradingSettings settings) {
    return settings.withSensor(s -> s.withLines(format(), sensor()));
  }

  Optional<PlainLines> format() {
    return lines.format();
  }

  /** Refuses ports on which such lines cannot come, or not with their times. */
  void require(List<LinkAddress> ports) {
    lines.require(ports);
  }

  private Optional<String> sensor() {
    Optional<String> given = Optional.ofNullable(sensor).map(String::strip);
    if (given.filter(id -> !id.matches(ID)).isPresent()) {
      throw Failure.usage("--sensor must be 1 to 32 plain characters without blank, comma or *");
    }
    return given;
  }
}

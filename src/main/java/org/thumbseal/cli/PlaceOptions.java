package org.thumbseal.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.pipeline.GivenPlace;
import picocli.CommandLine.Option;

/** What a user may say about the air at the place of a test. */
final class PlaceOptions {
  @Option(
      names = "--ambient-kpa",
      paramLabel = "N",
      description = "barometric pressure at the place of the test, 40 to 115 kPa")
  private @Nullable Double ambient;

  @Option(
      names = "--altitude-m",
      paramLabel = "N",
      description = "altitude of the place, -500 to 11000 m; used where no pressure is known")
  private @Nullable Double altitude;

  /**
   * What was said.
   *
   * @throws Failure if a value is out of its range
   */
  GivenPlace place() {
    GradingOptions.checkRange("--ambient-kpa", ambient, 40, 115);
    GradingOptions.checkRange("--altitude-m", altitude, -500, 11_000);
    return GivenPlace.of(Optional.ofNullable(ambient), Optional.ofNullable(altitude));
  }
}

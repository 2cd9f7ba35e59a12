package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.grade.Criteria;
import org.thumbseal.guided.Stations;
import org.thumbseal.pipeline.GivenPlace;
import org.thumbseal.pipeline.GivenPump;
import org.thumbseal.pipeline.GivenSensor;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.KnownPump;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a user may say about a leak search, on the command line. */
final class SearchOptions {
  @Mixin private StationsOption stations = new StationsOption();

  @Option(
      names = "--criteria",
      paramLabel = "FILE",
      description = "limits in a JSON file; default: at least 80 kPa")
  private @Nullable Path criteria;

  @Mixin private PlaceOptions air = new PlaceOptions();

  @Option(
      names = "--jar-l",
      paramLabel = "N",
      description = "volume of the jar, 0.05 to 50 L: with it a leak is told in mL/min")
  private @Nullable Double jar;

  @Mixin private RegisterOption register = new RegisterOption();

  private Optional<KnownPump> known = Optional.empty();
  private Criteria limits = Criteria.DEFAULT;
  private GivenPlace place = GivenPlace.NONE;

  /** Checks all that was said, and looks the pump up. */
  void look(String asset, PrintWriter err) {
    place = air.place();
    GradingOptions.checkRange("--jar-l", jar, 0.05, 50);
    Optional<Criteria> said = Optional.ofNullable(criteria).map(CriteriaCommand::read);
    known = register.read(said, err).flatMap(kept -> kept.pumps().of(asset));
    limits = said.or(() -> known.flatMap(KnownPump::criteria)).orElse(Criteria.DEFAULT);
  }

  Stations stations() {
    return stations.stations();
  }

  /** Volume of the jar, L. */
  Optional<Double> litres() {
    return Optional.ofNullable(jar)
        .or(() -> known.flatMap(pump -> pump.equipment().jarLitres()))
        .or(() -> limits.equipment().jarLitres());
  }

  /**
   * For tests that bear no name of a pump and no jar: at most stations there is none in the path,
   * and a test without it must not count as the pump's monthly one.
   */
  GradingSettings settings() {
    return new GradingSettings(limits, GivenPump.NONE, place, GivenSensor.NONE);
  }
}

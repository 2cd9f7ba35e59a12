package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.finding.SoundRecord;
import org.thumbseal.grade.Criteria;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.SoundRecordFile;
import org.thumbseal.pipeline.GivenPlace;
import org.thumbseal.pipeline.GivenPump;
import org.thumbseal.pipeline.GivenSensor;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;
import org.thumbseal.visit.BadScanException;
import org.thumbseal.visit.ScannedCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tools.jackson.databind.node.ObjectNode;

/** What a user may say about a test, on the command line. */
final class GradingOptions {
  @Option(
      names = "--asset",
      paramLabel = "ID",
      description = "id of the pump under test: plain, or the GS1 code of its label")
  private @Nullable String asset;

  @Option(
      names = "--criteria",
      paramLabel = "FILE",
      description = "limits in a JSON file; default: +65 kPa within 10 s, at least 80 kPa")
  private @Nullable Path criteria;

  @Mixin private PlaceOptions air = new PlaceOptions();

  @Option(names = "--jar-l", paramLabel = "N", description = "volume of the jar, 0.05 to 50 L")
  private @Nullable Double jar;

  @Option(
      names = "--against",
      paramLabel = "RESULT",
      description = "a passed result of the same pump with the same jar, to compare with")
  private @Nullable Path against;

  @Option(
      names = "--pinched",
      description = "for a leak: the hose to the pump was pinched, so the pump cannot leak back")
  private boolean pinched;

  @Mixin private RegisterOption register = new RegisterOption();

  /** What was said; a remark on it goes to {@code err}. */
  GradingSettings settings(PrintWriter err) {
    GivenPlace place = air.place();
    checkRange("--jar-l", jar, 0.05, 50);
    Optional<Criteria> limits = Optional.ofNullable(criteria).map(CriteriaCommand::read);
    GradingSettings said = settings(limits.orElse(Criteria.DEFAULT), place);
    return register.read(limits, err).map(kept -> said.withPumps(kept.pumps())).orElse(said);
  }

  private GradingSettings settings(Criteria limits, GivenPlace place) {
    return new GradingSettings(
        limits,
        new GivenPump(givenAsset(), Optional.ofNullable(jar), pinched, readSound()),
        place,
        GivenSensor.NONE);
  }

  private Optional<SoundRecord> readSound() {
    Path file = against;
    if (file == null) {
      return Optional.empty();
    }
    try {
      SoundRecord sound = SoundRecordFile.of(unaltered(file));
      boolean another =
          givenAsset().flatMap(id -> sound.asset().filter(a -> !a.equals(id))).isPresent();
      if (another) {
        throw Failure.usage(
            "--against " + file + ": is of another pump, " + sound.asset().orElse(""));
      }
      return Optional.of(sound);
    } catch (JsonRefusedException e) {
      throw Failure.usage("--against " + file + ": " + e.getMessage());
    }
  }

  /** A document as {@code replay --json} prints it has no seal; one that has must keep to it. */
  private static ObjectNode unaltered(Path file) throws JsonRefusedException {
    ObjectNode document = JsonGate.read(file);
    if (document.has(Seal.SIGNATURE)) {
      SealCheck seal = new SealVerifier(TrustStore.of()).check(document);
      if (!seal.intact()) {
        throw new JsonRefusedException("its seal is broken: " + seal.reason());
      }
    }
    return document;
  }

  /** What a scanner reads from the label will do as well. */
  private Optional<String> givenAsset() {
    String given = asset;
    try {
      return given == null ? Optional.empty() : Optional.of(ScannedCode.of(given).asset());
    } catch (BadScanException e) {
      throw Failure.usage(
          e.reason() == BadScanException.Cause.BAD_ASSET
              ? "--asset must be 1 to 100 plain characters"
              : "--asset: " + e.getMessage());
    }
  }

  static void checkRange(String option, @Nullable Double value, double low, double high) {
    if (value != null && !(value >= low && value <= high)) {
      throw Failure.usage(
          String.format(
              java.util.Locale.ROOT,
              "%s must be between %s and %s, not %s",
              option,
              plain(low),
              plain(high),
              plain(value)));
    }
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}

package org.thumbseal.accuracy;

import static org.thumbseal.accuracy.Ranked.text;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.thumbseal.simulate.FaultKind;

/**
 * Runs the pipeline that grades real records over records whose truth is known, and holds what it
 * says against what must be.
 */
public final class Accuracy {
  private static final int DAMAGED_LINES_A_PUMP = 2_000;

  private Accuracy() {}

  /**
   * What to run.
   *
   * @param pumps how many are simulated, at least 1
   * @param seed the same seed gives the same table
   * @param findings whether findings are tried as well, on as many pumps again
   */
  public record Run(int pumps, long seed, boolean findings) {
    /** Refuses a run without pumps. */
    public Run {
      if (pumps < 1) {
        throw new IllegalArgumentException("the number of pumps must be at least 1");
      }
    }
  }

  /**
   * The table of simulated pumps.
   *
   * @param progress takes a line now and then, from any thread
   */
  public static AccuracyTable simulated(Run run, Consumer<String> progress) {
    Population population = new Population(run.pumps(), run.seed());
    Trials trials = Trials.of(population, new Progress(progress, "pumps", run.pumps()));
    List<Row> rows = new ArrayList<>(errors(trials));
    rows.addAll(coverage(trials));
    rows.addAll(verdicts(trials));
    rows.add(LineFigure.of(population.measured(0).later(), DAMAGED_LINES_A_PUMP * run.pumps()));
    List<String> notes = new ArrayList<>();
    if (run.findings()) {
      FindingFigures found =
          FindingFigures.of(population, new Progress(progress, "findings", run.pumps()));
      rows.addAll(found.rows());
      notes.addAll(found.matrix());
    }
    String title = text("%d simulated pumps, seed %d", run.pumps(), run.seed());
    return new AccuracyTable(title, rows, notes);
  }

  private static List<Row> errors(Trials trials) {
    List<Trial> sound = trials.of(Sensing.EXACT, FaultKind.NONE).toList();
    return List.of(
        ErrorFigures.rise(sound),
        ErrorFigures.maximum(trials.of(Sensing.EXACT).toList()),
        speed("", trials, FaultKind.NONE, FaultKind.WORN_VALVES, FaultKind.LEAK),
        speed(", sound pumps", trials, FaultKind.NONE),
        speed(", leaking pumps", trials, FaultKind.LEAK),
        speed(", weak pumps", trials, FaultKind.WORN_VALVES),
        speed(", slow pumps", trials, FaultKind.LOST_SPEED));
  }

  private static Row speed(String which, Trials trials, FaultKind... kinds) {
    return ErrorFigures.speed(which, trials.of(Sensing.EXACT, kinds).toList());
  }

  private static List<Row> coverage(Trials trials) {
    List<Row> rows = new ArrayList<>();
    rows.addAll(CoverageFigures.judged("gain normal", trials.of(Sensing.NORMAL).toList()));
    rows.addAll(CoverageFigures.told("gain +-2.5 %", trials.of(Sensing.RECTANGULAR).toList()));
    rows.addAll(CoverageFigures.told("no gain error", trials.of(Sensing.EXACT).toList()));
    return rows;
  }

  private static List<Row> verdicts(Trials trials) {
    return Stream.of(
            VerdictFigures.of("gain +-2.5 %", trials.of(Sensing.RECTANGULAR).toList()),
            VerdictFigures.of("1 % bad lines", trials.of(Sensing.BAD_LINE).toList()))
        .flatMap(List::stream)
        .toList();
  }

  /**
   * The table of captures that have a truth beside them.
   *
   * @throws UnreadableCapturesException if the truth or a capture it names cannot be read
   */
  public static AccuracyTable ofCaptures(Path folder) throws UnreadableCapturesException {
    Map<String, Trial> named = CaptureFolder.trials(folder);
    List<Trial> trials = List.copyOf(named.values());
    List<Row> rows = new ArrayList<>();
    rows.add(ErrorFigures.rise(trials));
    rows.add(ErrorFigures.maximum(trials));
    rows.add(ErrorFigures.speed("", trials));
    rows.addAll(CoverageFigures.told("as recorded", trials));
    rows.addAll(
        VerdictFigures.of(
            "as recorded", trials.stream().filter(t -> t.truth().isWhole()).toList()));
    return new AccuracyTable(
        text("%d captures with a test in them", named.size()), rows, errors(named));
  }

  private static List<String> errors(Map<String, Trial> named) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "| capture | occludedAt, s | openVacuum, kPa | riseTime, s | maximumVacuum, kPa | pumpingSpeed, L/min |");
    lines.add("|---|---|---|---|---|---|");
    named.forEach(
        (name, trial) ->
            lines.add(
                "| "
                    + name
                    + error(trial, Truth.ONSET)
                    + error(trial, Truth.OPEN)
                    + error(trial, Truth.RISE)
                    + error(trial, Truth.MAXIMUM)
                    + error(trial, Truth.SPEED)
                    + " |"));
    return lines;
  }

  private static String error(Trial trial, String name) {
    OptionalDouble error = trial.error(name);
    return error.isPresent() ? text(" | %+.4f", error.getAsDouble()) : " | -";
  }
}

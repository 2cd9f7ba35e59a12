package org.thumbseal.accuracy;

import static org.thumbseal.accuracy.Ranked.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.thumbseal.simulate.FaultKind;

/** What was found to be wrong against what was. */
final class FindingFigures {
  private static final String WHAT = "finding right, given the pump's own sound record";
  private static final String MUST = "90 %";
  private static final double RIGHT = 0.9;
  private static final List<Double> CONFIDENCES = List.of(0.0, 0.5, 0.7, 0.9, 1.01);

  private final List<FoundPump> pumps;

  FindingFigures(List<FoundPump> pumps) {
    this.pumps = List.copyOf(pumps);
  }

  /** Runs a population of every kind. */
  static FindingFigures of(Population population, Progress progress) {
    return new FindingFigures(
        population
            .indexes()
            .parallel()
            .mapToObj(
                index -> {
                  FoundPump pump = FoundPump.of(population.found(index));
                  progress.done();
                  return pump;
                })
            .toList());
  }

  List<Row> rows() {
    if (isSilent()) {
      return List.of(Row.notMeasured(WHAT, MUST));
    }
    double right = share(pumps, FoundPump::isRight);
    List<Row> rows = new ArrayList<>();
    rows.add(
        Row.judged(WHAT, MUST, text("%.1f %% of %d", 100 * right, pumps.size()), right >= RIGHT));
    for (int i = 0; i + 1 < CONFIDENCES.size(); i++) {
      rows.add(saidWith(CONFIDENCES.get(i), CONFIDENCES.get(i + 1)));
    }
    return rows;
  }

  private boolean isSilent() {
    return pumps.stream().allMatch(p -> p.said().isEmpty());
  }

  private Row saidWith(double least, double below) {
    List<FoundPump> said =
        pumps.stream()
            .filter(p -> p.said().isPresent())
            .filter(p -> p.said().get().confidence() >= least)
            .filter(p -> p.said().get().confidence() < below)
            .toList();
    return Row.told(
        text("finding right, said with %.1f to %.1f", least, Math.min(1, below)),
        said.isEmpty()
            ? "never said"
            : text("%.1f %% of %d", 100 * share(said, FoundPump::isRight), said.size()));
  }

  /** A line for each kind of fault, a column for each finding, and the share that is right. */
  List<String> matrix() {
    if (isSilent()) {
      return List.of();
    }
    List<String> codes = codes();
    List<String> lines = new ArrayList<>();
    lines.add("Findings (columns: said; rows: what was wrong, mild and gross halves last):");
    lines.add("");
    lines.add("| | " + String.join(" | ", codes) + " | right | mild | gross |");
    lines.add("|---".repeat(codes.size() + 4) + "|");
    for (FaultKind kind : FaultKind.values()) {
      lines.add(line(kind, codes));
    }
    return lines;
  }

  private List<String> codes() {
    return Arrays.stream(FaultKind.values()).map(FaultKind::finding).distinct().toList();
  }

  private String line(FaultKind kind, List<String> codes) {
    List<FoundPump> of = pumps.stream().filter(p -> p.fault().kind() == kind).toList();
    Ranked severities = Ranked.of(of.stream().mapToDouble(p -> p.fault().severity()));
    double middle = severities.isEmpty() ? 0 : severities.within(0.5);
    String counts =
        codes.stream()
            .map(c -> Long.toString(of.stream().filter(p -> p.saidCode().equals(c)).count()))
            .collect(Collectors.joining(" | "));
    return "| "
        + kind.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ')
        + " | "
        + counts
        + text(
            " | %.0f %% | %.0f %% | %.0f %% |",
            100 * share(of, FoundPump::isRight),
            100 * share(part(of, s -> s <= middle), FoundPump::isRight),
            100 * share(part(of, s -> s > middle), FoundPump::isRight));
  }

  private static List<FoundPump> part(List<FoundPump> pumps, Predicate<Double> severity) {
    return pumps.stream().filter(p -> severity.test(p.fault().severity())).toList();
  }

  private static double share(List<FoundPump> pumps, Predicate<FoundPump> of) {
    return pumps.isEmpty() ? 0 : pumps.stream().filter(of).count() / (double) pumps.size();
  }
}

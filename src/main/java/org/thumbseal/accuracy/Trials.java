package org.thumbseal.accuracy;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.thumbseal.simulate.FaultKind;
import org.thumbseal.simulate.Scenario;

/** Every pump of a population, sensed in every way. */
final class Trials {
  private final List<Map<Sensing, Trial>> pumps;

  private Trials(List<Map<Sensing, Trial>> pumps) {
    this.pumps = pumps;
  }

  /** Runs them on all processors; the answer does not depend on how many there are. */
  static Trials of(Population population, Progress progress) {
    LongFunction<Map<Sensing, Trial>> run =
        index -> {
          Map<Sensing, Trial> trials = sensed(population.measured(index).later());
          progress.done();
          return trials;
        };
    return new Trials(population.indexes().parallel().mapToObj(run).toList());
  }

  private static Map<Sensing, Trial> sensed(Scenario scenario) {
    Truth truth = Truth.of(scenario.truth().get(0));
    Map<Sensing, Trial> trials = new EnumMap<>(Sensing.class);
    for (Sensing sensing : Sensing.values()) {
      trials.put(sensing, Trial.of(sensing.of(scenario), truth));
    }
    return trials;
  }

  Stream<Trial> of(Sensing sensing) {
    return pumps.stream().flatMap(p -> Stream.ofNullable(p.get(sensing)));
  }

  Stream<Trial> of(Sensing sensing, FaultKind... kinds) {
    Predicate<Trial> wanted = t -> List.of(kinds).contains(t.truth().fault().kind());
    return of(sensing).filter(wanted);
  }
}

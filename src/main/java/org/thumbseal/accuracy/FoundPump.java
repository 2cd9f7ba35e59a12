package org.thumbseal.accuracy;

import java.util.List;
import java.util.Optional;
import org.thumbseal.accuracy.Measured.Finding;
import org.thumbseal.capture.Capture;
import org.thumbseal.finding.Signs;
import org.thumbseal.finding.SoundRecord;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.simulate.Fault;
import org.thumbseal.simulate.PumpHistory;

/**
 * What was wrong with a pump, and what the program said with the pump's own sound record beside it.
 *
 * @param fault what was wrong
 * @param said the surest finding; empty where nothing was found to be wrong
 */
record FoundPump(Fault fault, Optional<Finding> said) {
  static final String NONE = "none";

  /** Grades both days. */
  static FoundPump of(PumpHistory history) {
    double litres = history.sound().plant().jar().nominalLitres();
    List<ResultDocument> sound = Trial.graded(Trial.capture(history.sound()), litres);
    List<Measured> later = compared(Trial.capture(history.later()), litres, sound);
    return new FoundPump(
        history.later().plant().fault(),
        later.stream().flatMap(m -> m.findings().stream()).findFirst());
  }

  /** The one place where a record is graded against an earlier one. */
  private static List<Measured> compared(Capture later, double litres, List<ResultDocument> sound) {
    if (sound.size() != 1) {
      return List.of();
    }
    SoundRecord then =
        new SoundRecord("", Optional.empty(), Signs.of(sound.get(0).measurement().orElseThrow()));
    return Trial.graded(later, Trial.settings(litres).withPump(p -> p.against(Optional.of(then))))
        .stream()
        .map(Measured::of)
        .toList();
  }

  String saidCode() {
    return said.map(Finding::code).orElse(NONE);
  }

  boolean isRight() {
    return saidCode().equals(fault.kind().finding());
  }
}

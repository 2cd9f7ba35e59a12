package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Decay;

/** A decay in a few lines of text. */
final class DecayText {
  private DecayText() {}

  static List<String> lines(Decay decay) {
    List<String> lines = new ArrayList<>();
    decay.leakRate().or(decay::decayRate).ifPresent(rate -> add(lines, decay, rate));
    decay.refusal().ifPresent(why -> lines.add("  leak: not measured: " + why));
    return lines;
  }

  private static void add(List<String> lines, Decay decay, Budgeted rate) {
    boolean pinched = decay.circumstances().pinched();
    lines.add(ResultText.row(pinched ? "leak of the jar" : "leak at most", rate.quantity()));
    if (!pinched) {
      lines.add(
          "  (jar and resting pump together; pinch the hose between them to tell them apart)");
    }
    if (decay.leakRate().isEmpty()) {
      lines.add("  (in mL/min when the volume of the jar is given: --jar-l)");
    } else if (!decay.reference().isAmbient()) {
      lines.add(airAssumed(decay));
    }
    if (decay.circumstances().startSaid()) {
      lines.add("  (nothing shows when the hose was pinched: taken from the last 8 s)");
    }
  }

  private static String airAssumed(Decay decay) {
    return String.format(
        Locale.ROOT,
        "  (counted at %.1f kPa: ambient pressure is not known)",
        decay.reference().kilopascals());
  }
}

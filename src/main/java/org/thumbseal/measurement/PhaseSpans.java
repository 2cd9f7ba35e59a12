package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.Steps.Level;
import org.thumbseal.phase.Ending;
import org.thumbseal.phase.Phase;

/** The phases of one test, each from the end of the one before. */
final class PhaseSpans {
  private static final double AT_MAXIMUM = 0.98;
  private static final double SMOOTHED = 0.2;
  private static final double GONE = 0.2;
  private static final double SETTLED = 0.5;

  private final Located located;
  private final Recorded recorded;
  private final Rest rest;
  private final Blocking blocking;
  private final Release release;
  private final Optional<Decay> decay;
  private final List<PhaseSpan> spans = new ArrayList<>();

  PhaseSpans(Located located, Optional<Decay> decay) {
    this.decay = decay;
    this.located = located;
    this.recorded = located.recorded();
    this.rest = located.rest();
    this.blocking = located.blocking();
    this.release = located.release();
  }

  List<PhaseSpan> list(Curve blocked) {
    double openFrom = rest.open().from();
    rest.idle().ifPresent(i -> add(Phase.IDLE, i.from(), i.to()));
    add(
        Phase.OPEN,
        rest.idle().isPresent() ? openFrom : recorded.curve().firstTime(),
        blocking.seconds());
    double hold = holdStart(blocked);
    add(Phase.RISE, blocking.seconds(), hold);
    addEnd(hold);
    return spans;
  }

  private double holdStart(Curve blocked) {
    Curve smooth = blocked.binned(SMOOTHED);
    double limit = AT_MAXIMUM * smooth.highest();
    for (int i = 0; i < smooth.size(); i++) {
      if (smooth.level(i) >= limit) {
        return smooth.time(i);
      }
    }
    return release.seconds();
  }

  private void addEnd(double hold) {
    double last = recorded.curve().lastTime();
    boolean decayed = recorded.window().ending() == Ending.DECAYED;
    boolean cutOff = release.seconds() > last;
    double end = Math.min(release.seconds(), last);
    double off = Math.max(hold, decay.map(d -> d.start() / located.clock().rate()).orElse(end));
    double idle = cutOff ? last : idleAfter(last);
    double decayEnd = decayed ? idle : end;
    add(Phase.HOLD, hold, off);
    add(Phase.DECAY, off, decayEnd);
    if (!cutOff) {
      add(Phase.RELEASE, decayEnd, idle);
      add(Phase.IDLE, idle, last);
    }
  }

  /** When the pump was switched off after the test: the last step down, if there is one. */
  private double idleAfter(double last) {
    boolean released = recorded.window().ending() == Ending.RELEASED;
    double end = recorded.window().endSeconds();
    double settled = SETTLED + (released ? Math.max(end, cameDown(last)) : end);
    List<Level> levels = Steps.of(recorded.curve().between(settled, last + 1e-9));
    int n = levels.size();
    boolean down = n > 1 && levels.get(n - 1).mean() < levels.get(n - 2).mean();
    return down ? levels.get(n - 1).from() : last;
  }

  /** When the vacuum was as good as gone; the end of the test is told before that. */
  private double cameDown(double last) {
    Curve after = recorded.curve().between(release.seconds(), last + 1e-9).binned(SMOOTHED / 2);
    double open = rest.openMean();
    double gone = open + GONE * (after.highest() - open);
    int i = 0;
    while (i < after.size() && after.level(i) > gone) {
      i++;
    }
    return i < after.size() ? after.time(i) : last;
  }

  private void add(Phase phase, double from, double to) {
    if (to > from) {
      spans.add(new PhaseSpan(phase, located.trueTime(from), located.trueTime(to)));
    }
  }
}

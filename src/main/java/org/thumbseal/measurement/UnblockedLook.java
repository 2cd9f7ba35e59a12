package org.thumbseal.measurement;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.measurement.Steps.Level;
import org.thumbseal.phase.Ending;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.TestWindow;
import org.thumbseal.phase.UnblockedWindow;

/** The levels of a record in which the inlet stayed open. */
final class UnblockedLook {
  private final UnblockedWindow window;
  private final Setup setup;
  private final Recorded recorded;
  private final ClockCheck clock;
  private final Rest rest;
  private final Zero zero;

  UnblockedLook(UnblockedWindow window, Setup setup) {
    this.window = window;
    this.setup = setup;
    double end = window.endSeconds();
    TestWindow whole =
        new TestWindow(window.events(), end, 0, end, Ending.CUT_OFF, Optional.of(window.start()));
    recorded = Recorded.of(whole, setup.calibration());
    clock = ClockCheck.of(recorded.samples(), setup.times());
    rest = Rest.before(recorded.curve(), end);
    zero = new ZeroFinder(recorded, setup, rest).find();
  }

  Unblocked look() {
    return new Unblocked(
        Optional.of(time(window.start().seconds())),
        rest.idle().map(idle -> openVacuum()),
        setup.ambient().or(() -> rest.air(setup, zero)),
        rest.idle().map(this::phases).orElse(List.of()),
        zero,
        recorded.noise(),
        new Quality.Clock(clock.rate(), clock.standardUncertainty(), clock.steady()),
        setup.calibration());
  }

  private Budgeted openVacuum() {
    double open = rest.openMean() - zero.kilopascals();
    SensorErrors errors =
        new SensorErrors(setup.calibration(), recorded.resolution(), zero, recorded.noise());
    String reached =
        String.format(
            Locale.ROOT,
            "Mean of the last 2 s before %.2f s; the inlet was not blocked.",
            time(window.endSeconds()));
    return new Budgeted(
            open, "kPa", errors.ofLevel(open, rest.openError(), "mean over the open phase"))
        .reached(reached);
  }

  private List<PhaseSpan> phases(Level idle) {
    double running = time(idle.to());
    return List.of(
        new PhaseSpan(Phase.IDLE, time(idle.from()), running),
        new PhaseSpan(Phase.OPEN, running, time(recorded.curve().lastTime())));
  }

  private double time(double deviceSeconds) {
    return deviceSeconds * clock.rate();
  }
}

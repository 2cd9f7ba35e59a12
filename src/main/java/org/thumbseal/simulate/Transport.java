package org.thumbseal.simulate;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import org.thumbseal.simulate.Act.LoseLines;

/** Carries the lines to the host, with all that a line does to them. */
final class Transport implements Iterator<TimedLine> {
  private static final double LATENCY_SECONDS = 0.004;
  private static final double HANDOVER_SECONDS = 0.0002;

  private final Iterator<SentLine> sent;
  private final Line line;
  private final List<Step> gaps;
  private final Draw chance;
  private final Damage damage;
  private final Deque<TimedLine> ready = new ArrayDeque<>();

  private String unended = "";
  private long lastMicros;
  private boolean begun;

  Transport(Scenario scenario, Iterator<SentLine> sent) {
    this.sent = sent;
    this.line = scenario.line();
    this.gaps =
        scenario.script().steps().stream().filter(s -> s.act() instanceof LoseLines).toList();
    this.chance = new Draw(scenario.seed(), "line");
    this.damage = new Damage(chance);
  }

  @Override
  public boolean hasNext() {
    while (ready.isEmpty() && sent.hasNext()) {
      carry(sent.next());
    }
    return !ready.isEmpty();
  }

  @Override
  public TimedLine next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    return ready.remove();
  }

  private void carry(SentLine next) {
    if (!begun && line.halfFirst()) {
      deliver(next.seconds(), damage.tail(next.line()));
    }
    begun = true;
    if (next.seconds() <= 0) {
      deliver(next.seconds(), next.line());
    } else if (!inGap(next.seconds()) && !chance.chance(line.lost())) {
      carryThrough(next);
    }
  }

  private void carryThrough(SentLine next) {
    if (!chance.chance(line.corrupt())) {
      deliver(next.seconds(), next.line());
    } else if (damage.takesLineEnd()) {
      unended += next.line();
    } else {
      deliver(next.seconds(), damage.to(next.line()));
    }
  }

  private void deliver(double seconds, String text) {
    ready.add(new TimedLine(arrival(seconds), unended + text));
    unended = "";
  }

  private boolean inGap(double seconds) {
    for (Step step : gaps) {
      if (step.act() instanceof LoseLines gap
          && seconds >= step.seconds()
          && seconds < step.seconds() + gap.seconds()) {
        return true;
      }
    }
    return false;
  }

  private long arrival(double seconds) {
    double there = seconds + LATENCY_SECONDS;
    double handed = line.burst() > 0 ? Math.ceil(there / line.burst()) * line.burst() : there;
    double micros = 1e6 * (handed + chance.between(0, HANDOVER_SECONDS));
    lastMicros = Math.max(lastMicros, Math.round(micros));
    return lastMicros;
  }
}

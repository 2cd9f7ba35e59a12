package org.thumbseal.simulate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.thumbseal.simulate.Act.SetInlet;
import org.thumbseal.simulate.Act.SwitchPump;

/**
 * What people and bad luck do, in order of time. The pump is off and the inlet open at first.
 *
 * @param steps acts by time
 * @param end when the recording ends, s after the first sample
 */
public record Script(List<Step> steps, double end) {
  private static final double RUNNING_BEFORE_SECONDS = 20;

  /** Sorts the steps by time; equal times keep their order. */
  public Script {
    Demand.notNegative(end, "end of the script");
    List<Step> sorted = new ArrayList<>(steps);
    sorted.sort(Comparator.comparingDouble(Step::seconds));
    steps = List.copyOf(sorted);
  }

  /** Begins with the pump off for so many seconds. */
  public static Script quiet(double seconds) {
    return new Script(List.of(), seconds);
  }

  /** Begins with a pump that has run for a while, and goes on so for some seconds. */
  public static Script running(double seconds) {
    Step before = new Step(-RUNNING_BEFORE_SECONDS, new SwitchPump(true));
    return new Script(List.of(before), seconds);
  }

  /** An act at the end, then so many seconds more. */
  public Script then(Act act, double seconds) {
    return new Script(plus(List.of(new Step(end, act))), end + seconds);
  }

  /** The pump is switched on, then so many seconds pass. */
  public Script pumpOn(double seconds) {
    return then(new SwitchPump(true), seconds);
  }

  /** The pump is switched off, then so many seconds pass. */
  public Script pumpOff(double seconds) {
    return then(new SwitchPump(false), seconds);
  }

  /** The hose to the pump is pinched, then so many seconds pass. */
  public Script pinch(double seconds) {
    return then(new Act.PinchHose(), seconds);
  }

  /** The inlet is blocked, then so many seconds pass. */
  public Script block(double seconds) {
    return then(new SetInlet(0), seconds);
  }

  /** The thumb slips and uncovers part of the inlet, then so many seconds pass. */
  public Script slip(double opening, double seconds) {
    return then(new SetInlet(opening), seconds);
  }

  /** The inlet is opened, then so many seconds pass. */
  public Script release(double seconds) {
    return then(new SetInlet(1), seconds);
  }

  /** The same script with an act at a time within it, s after the first sample. */
  public Script with(double seconds, Act act) {
    return new Script(plus(List.of(new Step(seconds, act))), end);
  }

  /** This script, and when it is over another one; what was done before that is done at once. */
  public Script followedBy(Script next) {
    List<Step> later = next.steps.stream().map(this::afterwards).toList();
    return new Script(plus(later), end + next.end);
  }

  private Step afterwards(Step step) {
    return new Step(end + Math.max(0, step.seconds()), step.act());
  }

  private List<Step> plus(List<Step> more) {
    List<Step> all = new ArrayList<>(steps);
    all.addAll(more);
    return all;
  }
}

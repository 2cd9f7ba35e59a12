package org.thumbseal.simulate;

import org.thumbseal.simulate.Act.LoseLines;
import org.thumbseal.simulate.Act.PressKey;
import org.thumbseal.simulate.Act.ReportFault;
import org.thumbseal.simulate.Act.RestartSensor;

/** Draws what happens in a kind. */
final class ScriptDraw {
  private static final double KEY_SECONDS = 0.25;
  private static final double DEFAULT_IDLE_SECONDS = 3600;

  private final Draw draw;
  private final Conditions conditions;
  private final Plant plant;

  ScriptDraw(Conditions conditions, Draw draw, Plant plant) {
    this.draw = draw;
    this.conditions = conditions;
    this.plant = plant;
  }

  Script of(SimulationKind kind) {
    return switch (kind) {
      case SLIPPED -> slipped();
      case RELEASED_EARLY -> test(rise() * between(0.35, 0.7));
      case NEVER_BLOCKED -> key(start()).pumpOn(between(20, 40)).pumpOff(3);
      case LEAK, WORN_PUMP -> draw.chance(0.5) ? offWhileBlocked() : test(held());
      case OFF_WHILE_BLOCKED -> offWhileBlocked();
      case PINCHED_HOSE -> open().block(held()).pinch(between(30, 45)).release(3);
      case LATE -> end(key(start()).pumpOn(between(25, 60)).block(held()));
      case ALREADY_RUNNING -> end(Script.running(between(3, 6)).block(held()));
      case IDLE -> idle(conditions.idleSeconds().orElse(DEFAULT_IDLE_SECONDS));
      case GAP -> duringRise(new LoseLines(between(0.4, 1.5)));
      case RESTART -> duringRise(new RestartSensor(between(0.3, 1.5)));
      case SENSOR_FAULT -> duringRise(new ReportFault("ADC"));
      default -> test(held());
    };
  }

  private Script slipped() {
    Script slipping = open().block(rise() * between(0.4, 0.8));
    return end(slipping.slip(between(0.3, 0.7), between(0.3, 0.8)).block(held()));
  }

  private Script offWhileBlocked() {
    return open().block(held()).pumpOff(between(20, 30)).release(3);
  }

  private Script duringRise(Act act) {
    Script before = open();
    double moment = before.end() + rise() * between(0.3, 0.9);
    return end(before.block(held())).with(moment, act);
  }

  /** A whole test whose inlet is blocked for so many seconds. */
  private Script test(double blocked) {
    return end(open().block(blocked));
  }

  private Script end(Script blocked) {
    return blocked.release(between(2, 4)).pumpOff(between(2, 4));
  }

  private Script open() {
    return key(start()).pumpOn(between(4, 8));
  }

  private Script start() {
    return Script.quiet(between(3, 5));
  }

  private Script key(Script quiet) {
    if (draw.chance(0.4)) {
      return quiet;
    }
    double moment = between(0.5, quiet.end() - 2 * KEY_SECONDS);
    return quiet.with(moment, new PressKey(true)).with(moment + KEY_SECONDS, new PressKey(false));
  }

  private Script idle(double seconds) {
    Script script = Script.quiet(Math.min(seconds, between(60, 600)));
    while (script.end() + 120 < seconds) {
      script = script.pumpOn(between(10, 60)).pumpOff(between(60, 1200));
    }
    return new Script(script.steps(), seconds);
  }

  /** Long enough to stand at the maximum, s. */
  private double held() {
    return between(5.5, 6.5) * tau() + (isFiltered() ? 20 : 0);
  }

  /** About the time of the rise if all were well, s. */
  private double rise() {
    return 1.2 * tau();
  }

  private double tau() {
    return plant.jar().cubicMetres() / plant.pump().speed();
  }

  private boolean isFiltered() {
    return Double.isFinite(plant.circuit().filterConductance());
  }

  private double between(double low, double high) {
    return draw.between(low, high);
  }
}

package org.thumbseal.simulate;

import org.thumbseal.simulate.Act.Connect;

/** Ready-made scenarios whose parameters are drawn from a seed. */
public final class Simulation {
  private Simulation() {}

  /** A scenario of a kind with everything drawn. */
  public static Scenario of(SimulationKind kind, long seed) {
    return of(kind, seed, Conditions.NONE);
  }

  /** A scenario of a kind in which some things are fixed. */
  public static Scenario of(SimulationKind kind, long seed, Conditions conditions) {
    PlantDraw plants = new PlantDraw(kind, conditions, new Draw(seed, "plant"));
    SensorDraw sensors = new SensorDraw(conditions, new Draw(seed, "electronics"));
    Plant plant = plants.of(kind);
    Draw hands = new Draw(seed, "hands");
    Script script = new ScriptDraw(conditions, hands, plant).of(kind);
    if (kind == SimulationKind.TWO_TESTS) {
      Plant other = plants.sound();
      script = script.then(new Connect(other), 0);
      script = script.followedBy(new ScriptDraw(conditions, hands, other).of(kind));
    }
    return new Scenario(plant, sensors.sensor(kind), sensors.line(kind), script, seed);
  }
}

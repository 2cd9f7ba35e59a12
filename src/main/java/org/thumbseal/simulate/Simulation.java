package org.thumbseal.simulate;

import org.thumbseal.simulate.Act.Connect;

/** Ready-made scenarios whose parameters are drawn from a seed. */
public final class Simulation {
  private static final int MOST_TIMES = 1_000;

  /** The zero of a low-cost sensor from one month to the next, Pa (common practice). */
  private static final double ZERO_MOVES = 100;

  private Simulation() {}

  /** A scenario of a kind with everything drawn. */
  public static Scenario of(SimulationKind kind, long seed) {
    return of(kind, seed, Conditions.NONE);
  }

  /** A scenario of a kind in which some things are fixed. */
  public static Scenario of(SimulationKind kind, long seed, Conditions conditions) {
    return of(kind, seed, conditions, 1);
  }

  /**
   * A scenario of a kind repeated: the sensor goes from one pump to the next of the same kind.
   *
   * @param times how often, 1 to {@value #MOST_TIMES}
   */
  public static Scenario of(SimulationKind kind, long seed, Conditions conditions, int times) {
    Demand.that(
        times >= 1 && times <= MOST_TIMES,
        "times to repeat must be 1 to " + MOST_TIMES + ", not " + times);
    PlantDraw plants = new PlantDraw(kind, conditions, seed);
    SensorDraw electronics = new SensorDraw(conditions, new Draw(seed, "electronics"));
    Draw hands = new Draw(seed, "hands");
    Plant first = plants.of(kind);
    Script script = new ScriptDraw(conditions, hands, first).of(kind);
    int sessions = kind == SimulationKind.TWO_TESTS ? 2 * times : times;
    for (int i = 1; i < sessions; i++) {
      Plant next = plants.of(kind);
      Script more = new ScriptDraw(conditions, hands, next).of(kind);
      script = script.then(new Connect(next), 0).followedBy(more);
    }
    return new Scenario(first, electronics.sensor(kind), electronics.line(kind), script, seed);
  }

  /**
   * The pump of {@link #of(SimulationKind, long, Conditions)} as it was tested when it was sound:
   * the same pump, jar, place and sensor on another day, with a thumb, noise and a zero of that
   * day.
   */
  public static Scenario soundTwin(SimulationKind kind, long seed, Conditions conditions) {
    Scenario later = of(kind, seed, conditions);
    Draw day = new Draw(seed, "earlier day");
    PlantDraw plants = new PlantDraw(kind, conditions, seed);
    Plant sound = plants.sound().with(plants.otherDay(day));
    Script script = new ScriptDraw(conditions, day, sound).of(SimulationKind.SOUND);
    Transducer moved = later.sensor().transducer().shifted(day.between(-ZERO_MOVES, ZERO_MOVES));
    Sensor sensor = later.sensor().with(moved);
    return new Scenario(sound, sensor, later.line(), script, Draw.another(seed));
  }
}

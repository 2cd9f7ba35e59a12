package org.thumbseal.simulate;

/** Something that happens to the pump, the sensor or the line at an instant. */
public sealed interface Act {

  /** The pump's switch. The motor takes {@value Bench#SPIN_SECONDS} s to follow. */
  record SwitchPump(boolean on) implements Act {}

  /** The hose between jar and pump is pinched, and stays so: the jar is on its own. */
  record PinchHose() implements Act {}

  /**
   * A hand at the inlet.
   *
   * @param opening 0 blocks it, 1 opens it; between them a thumb that has slipped
   */
  record SetInlet(double opening) implements Act {
    /** Refuses an opening outside 0 to 1. */
    public SetInlet {
      Demand.fraction(opening, "inlet opening");
    }
  }

  /** The sensor is put on another plant, at rest, its inlet open. */
  record Connect(Plant plant) implements Act {}

  /** The sensor's start key. */
  record PressKey(boolean down) implements Act {}

  /** The sensor loses power for so many seconds and begins anew. */
  record RestartSensor(double seconds) implements Act {
    /** Refuses a negative time. */
    public RestartSensor {
      Demand.notNegative(seconds, "time without power");
    }
  }

  /** The sensor reports a fault code. */
  record ReportFault(String code) implements Act {}

  /** Nothing gets through the line for so many seconds. */
  record LoseLines(double seconds) implements Act {
    /** Refuses a negative time. */
    public LoseLines {
      Demand.notNegative(seconds, "length of the gap");
    }
  }
}

package org.thumbseal.fuzz;

/** Something that reads bytes of unknown origin, and what it may make of them. */
interface Target {

  /** The next spoilt input, as the dice fall. */
  Attempt next(Dice dice);

  /** What came of all attempts so far, some lines for a person. */
  String figures();

  /** Fails where the figures as a whole say that something is wrong. */
  default void settle() {}

  /** One spoilt input, and what is to be done with it. */
  interface Attempt {
    /** The input, for the failure message. */
    byte[] input();

    /**
     * Has it read; throws whatever no reader may throw, {@link AssertionError} for a wrong answer.
     */
    void run() throws Exception;
  }

  /** An attempt made of both. */
  final class Reading implements Attempt {
    private final byte[] input;
    private final Trial trial;

    Reading(byte[] input, Trial trial) {
      this.input = input;
      this.trial = trial;
    }

    @Override
    public byte[] input() {
      return input;
    }

    @Override
    public void run() throws Exception {
      trial.read(input);
    }
  }

  /** What is done with an input. */
  interface Trial {
    void read(byte[] input) throws Exception;
  }
}

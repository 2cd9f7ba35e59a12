package org.thumbseal.fleet;

import java.time.Instant;
import java.util.Random;

/**
 * A pump and what people do with it.
 *
 * @param card what the register says of it
 * @param pump what it is like
 * @param random chance of its own
 */
public record Life(Card card, WardPump pump, Random random) {
  private static final int OUT_OF_USE_FROM = 28;
  private static final int AWAY_FROM = 32;
  private static final int FORGOTTEN_FROM = 34;

  private int number() {
    return Integer.parseInt(card.id().substring(3));
  }

  /** Its word in the register today. */
  String status() {
    return switch (number() % 20) {
      case 0 -> "retired";
      case 11 -> "away";
      default -> "in-use";
    };
  }

  /** Whether it is tested in a month. */
  boolean isTested(int month) {
    return switch (number() % 20) {
      case 0 -> month < OUT_OF_USE_FROM;
      case 11 -> month < AWAY_FROM;
      case 14 -> month < FORGOTTEN_FROM;
      default -> number() != 48;
    };
  }

  /** What becomes of it. */
  public Fate fate() {
    return pump.fate();
  }

  /** Whether it would fail within three years of an instant if nobody did anything any more. */
  public boolean wouldFail(Instant at) {
    return pump.failsUnattended(Hospital.month(at), Hospital.MONTHS);
  }
}

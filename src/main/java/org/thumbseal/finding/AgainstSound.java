package org.thumbseal.finding;

import static org.thumbseal.finding.Plain.text;

import java.util.Optional;
import org.thumbseal.finding.Signs.Pump;

/**
 * Findings from what has changed since the same pump was sound.
 *
 * <p>A leak takes vacuum and leaves the speed; worn valves take both; lost speed leaves the vacuum;
 * less volume looks like more speed and leaves the vacuum; a restriction bends the course.
 */
final class AgainstSound {
  /** More resistance times speed than the scatter from day to day (simulated pumps). */
  private static final double LEAST_RESTRICTION = 0.02;

  /** Less vacuum than that scatter, as a share of ambient. */
  private static final double LEAST_VACUUM = 0.008;

  /** Weather moves the ambient pressure by some 3 % (from memory); unmeasured, it looks so. */
  private static final double LEAST_IN_ANY_WEATHER = 0.03;

  /** More or less speed than that scatter, as a share of it. */
  private static final double LEAST_SPEED = 0.025;

  /** A leak that shows only as lost vacuum leaves so much of the speed. */
  private static final double SPEED_KEPT = 0.985;

  private final Pump now;
  private final Pump sound;
  private final double leastVacuum;

  private AgainstSound(Pump now, Pump sound, double leastVacuum) {
    this.now = now;
    this.sound = sound;
    this.leastVacuum = leastVacuum;
  }

  /**
   * The finding, if there is one.
   *
   * @param ambientMeasured whether a barometer gave the ambient pressure both times
   */
  static Optional<Finding> of(Pump now, Pump sound, boolean ambientMeasured) {
    double least = ambientMeasured ? LEAST_VACUUM : LEAST_IN_ANY_WEATHER;
    return new AgainstSound(now, sound, least).finding();
  }

  private Optional<Finding> finding() {
    if (moreRestriction() > LEAST_RESTRICTION) {
      return Optional.of(restriction());
    }
    boolean isLost = lostVacuum() > leastVacuum;
    if (isLost && (moreLeak() > lostVacuum() / 2 || speed() > SPEED_KEPT)) {
      return Optional.of(leak());
    }
    if (isLost || speed() < 1 - LEAST_SPEED) {
      return Optional.of(worn());
    }
    return speed() > 1 + LEAST_SPEED ? Optional.of(reduced()) : Optional.empty();
  }

  private double moreRestriction() {
    return now.restriction() - sound.restriction();
  }

  private double moreLeak() {
    return now.leak() - sound.leak();
  }

  /** As a share of ambient. */
  private double lostVacuum() {
    return sound.reach() - now.reach();
  }

  private double speed() {
    return now.rate() / sound.rate();
  }

  private Finding restriction() {
    return Finding.of(
        FindingCode.RESTRICTION,
        Strength.confidence(moreRestriction(), LEAST_RESTRICTION, 0.6),
        text(
            "A restriction takes about %.0f %% of the speed now, and %.0f %% when the pump was"
                + " sound.",
            now.percentRestricted(), sound.percentRestricted()));
  }

  private Finding leak() {
    return Finding.of(
        FindingCode.LEAK,
        Strength.confidence(Math.max(moreLeak(), lostVacuum()), leastVacuum, 0.6),
        text(
            "The vacuum comes to %.1f %% of the air pressure, %.1f %% when the pump was sound,"
                + " while the speed is at %.0f %% of what it was: air comes in.",
            100 * now.reach(), 100 * sound.reach(), 100 * speed()));
  }

  private Finding worn() {
    double size = Math.max(lostVacuum() / leastVacuum, (1 - speed()) / LEAST_SPEED);
    return Finding.of(
        FindingCode.WORN_PUMP,
        Strength.confidence(size, 1, 0.6),
        text(
            "The speed is at %.0f %% of what it was when the pump was sound, and the vacuum comes"
                + " to %.1f %% of the air pressure, %.1f %% then.",
            100 * speed(), 100 * now.reach(), 100 * sound.reach()));
  }

  private Finding reduced() {
    return Finding.of(
        FindingCode.REDUCED_VOLUME,
        Strength.confidence(speed() - 1, LEAST_SPEED, 0.6),
        text(
            "The rise is %.2f times as fast as when the pump was sound, to the same vacuum: some"
                + " %.0f %% of the volume are missing.",
            speed(), 100 * (1 - 1 / speed())));
  }
}

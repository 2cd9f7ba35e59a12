package org.thumbseal.daemon;

import java.time.Duration;
import org.thumbseal.link.Link;
import org.thumbseal.wire.WireRecord.Identity;

/** How long a sensor may say nothing good before its port counts as lost. */
final class Silence {
  /** The identity comes every 2 s, and a quarter more. */
  private static final Duration ONE_IDENTITY = Duration.ofMillis(2_500);

  private static final Duration LONGEST = Duration.ofSeconds(60);
  private static final double READINGS = 20;

  private final Duration linkStall;
  private Duration limit;

  /**
   * Begins with a limit for a sensor whose rate is not known yet.
   *
   * @param link tells how long it may hold back what was sent
   */
  Silence(Link link, Duration unknown) {
    this.linkStall = link.stall();
    this.limit = unknown;
  }

  /** The sensor said its rate: twenty readings, but not less than one identity. */
  void heard(Identity identity) {
    Duration readings = Duration.ofMillis(Math.round(READINGS * 1_000 / identity.hertz()));
    Duration least = longer(ONE_IDENTITY, linkStall);
    Duration wanted = longer(readings, least);
    limit = wanted.compareTo(LONGEST) < 0 ? wanted : longer(LONGEST, linkStall);
  }

  Duration limit() {
    return limit;
  }

  private static Duration longer(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? other : one;
  }
}

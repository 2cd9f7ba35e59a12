package org.thumbseal.daemon;

import java.math.BigDecimal;
import java.time.Duration;

/**
 * How reading one connection ended.
 *
 * @param outcome what follows for the port; {@link PortOutcome#RUNNING}: it is opened again
 * @param why in words
 */
record SessionEnd(PortOutcome outcome, String why) {
  static final SessionEnd STOPPED = new SessionEnd(PortOutcome.STOPPED, "stopped");
  static final SessionEnd INPUT_ENDED = new SessionEnd(PortOutcome.INPUT_ENDED, "end of input");
  static final SessionEnd FAULT = new SessionEnd(PortOutcome.FAULT, "fault of this program");

  static SessionEnd lost(String why) {
    return new SessionEnd(PortOutcome.RUNNING, why);
  }

  static SessionEnd silent(Duration limit) {
    BigDecimal seconds = BigDecimal.valueOf(limit.toMillis(), 3).stripTrailingZeros();
    return lost("no good line for " + seconds.toPlainString() + " s");
  }
}

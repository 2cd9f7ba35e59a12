package org.thumbseal.cli;

import java.math.BigDecimal;
import java.util.Locale;
import org.thumbseal.link.PortAnswer;
import org.thumbseal.wire.WireRecord.Identity;

/** What a port answered, in words. */
final class AnswerText {
  private AnswerText() {}

  static String of(PortAnswer answer) {
    if (answer instanceof PortAnswer.Sensor sensor) {
      return of(sensor.identity());
    }
    if (answer instanceof PortAnswer.Stranger stranger) {
      return stranger.goodLines() > 0
          ? "speaks the protocol, but did not say who it is"
          : "something comes, but it is no sensor at this line speed (PORT?baud=N); if a board prints"
              + " plain numbers here: watch --port PORT --format lines:...";
    }
    return answer instanceof PortAnswer.Closed closed
        ? String.valueOf(closed.why().getMessage())
        : "nothing comes";
  }

  private static String of(Identity who) {
    return "sensor %s, firmware %s, %s, %s to %s kPa, %s Hz"
        .formatted(
            who.sensorId(),
            who.firmware(),
            who.reference().name().toLowerCase(Locale.ROOT),
            plain(BigDecimal.valueOf(who.lowPascals(), 3)),
            plain(BigDecimal.valueOf(who.highPascals(), 3)),
            plain(BigDecimal.valueOf(who.hertz())));
  }

  private static String plain(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }
}

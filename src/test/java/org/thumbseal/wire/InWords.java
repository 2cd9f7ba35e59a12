package org.thumbseal.wire;

import java.util.Locale;
import java.util.OptionalInt;
import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.Decoded.Rejected;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.StartKey;

/** Says what became of a line in the words that the firmware notes use behind {@code =>}. */
final class InWords {
  private InWords() {}

  static String of(Decoded decoded) {
    return decoded instanceof Good good ? of(good.content()) : ((Rejected) decoded).cause().code();
  }

  private static String of(WireRecord content) {
    if (content instanceof Identity identity) {
      return of(identity);
    } else if (content instanceof Reading r) {
      return "sample n=" + r.counter() + " t=" + r.micros() + " p=" + r.pascals();
    } else if (content instanceof Ambient a) {
      return "ambient t=%d Pa=%s temperature=%s"
          .formatted(a.micros(), of(a.pascals()), of(a.centiCelsius()));
    } else if (content instanceof StartKey k) {
      return "key t=" + k.micros() + (k.pressed() ? " pressed" : " released");
    } else if (content instanceof Fault f) {
      return "fault t=" + f.micros() + " " + f.code();
    }
    return "unknown";
  }

  private static String of(Identity i) {
    String reference = i.reference().name().toLowerCase(Locale.ROOT);
    String range = i.lowPascals() + " " + i.highPascals();
    return String.join(
        " ", "identity", i.sensorId(), i.firmware(), reference, range, "" + i.hertz());
  }

  private static String of(OptionalInt number) {
    return number.isPresent() ? Integer.toString(number.getAsInt()) : "none";
  }
}

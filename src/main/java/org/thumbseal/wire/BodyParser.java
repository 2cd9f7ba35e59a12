package org.thumbseal.wire;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.Reference;
import org.thumbseal.wire.WireRecord.StartKey;
import org.thumbseal.wire.WireRecord.Unknown;

/** Fields of a body whose checksum is already known to be good; empty where they do not fit. */
final class BodyParser {
  private static final int UNSIGNED_DIGITS = 10;
  private static final int SIGNED_DIGITS = 9;
  private static final int LONGEST_WORD = 32;
  private static final Pattern RATE = Pattern.compile("[0-9]{1,5}(\\.[0-9]{1,3})?");
  private static final String PROTOCOL_VERSION = "1";

  private BodyParser() {}

  static Optional<WireRecord> parse(String body) {
    if (!isAllOf(body, ' ', '~')) {
      return Optional.empty();
    }
    Fields fields = new Fields(List.of(body.split(",", -1)));
    fields.word(0);
    return fields.checked(shape(fields));
  }

  private static boolean isAllOf(String text, char low, char high) {
    boolean all = true;
    for (int i = 0; i < text.length(); i++) {
      all &= text.charAt(i) >= low && text.charAt(i) <= high;
    }
    return all;
  }

  private static Function<Fields, WireRecord> shape(Fields fields) {
    return switch (fields.at(0)) {
      case "I" -> PROTOCOL_VERSION.equals(fields.at(1)) ? BodyParser::identity : f -> new Unknown();
      case "S" -> BodyParser::reading;
      case "A" -> BodyParser::ambient;
      case "K" -> BodyParser::key;
      case "F" -> BodyParser::fault;
      default -> f -> new Unknown();
    };
  }

  private static WireRecord identity(Fields f) {
    f.count(8);
    f.require(f.at(4).equals("G") || f.at(4).equals("A"));
    Reference reference = f.at(4).equals("G") ? Reference.GAUGE : Reference.ABSOLUTE;
    int low = f.signed(5);
    int high = f.signed(6);
    f.require(low < high);
    return new Identity(f.word(2), f.word(3), reference, low, high, f.rate(7));
  }

  private static WireRecord reading(Fields f) {
    f.count(4);
    return new Reading(f.unsigned(1), f.unsigned(2), f.signed(3));
  }

  private static WireRecord ambient(Fields f) {
    f.count(4);
    return new Ambient(f.unsigned(1), f.optional(2), f.optional(3));
  }

  private static WireRecord key(Fields f) {
    f.count(3);
    f.require(f.at(2).equals("1") || f.at(2).equals("0"));
    return new StartKey(f.unsigned(1), f.at(2).equals("1"));
  }

  private static WireRecord fault(Fields f) {
    f.count(3);
    return new Fault(f.unsigned(1), f.word(2));
  }

  /** Reads fields by number and remembers whether one did not fit, instead of throwing. */
  private static final class Fields {
    private final List<String> texts;
    private boolean good = true;

    Fields(List<String> texts) {
      this.texts = texts;
    }

    Optional<WireRecord> checked(Function<Fields, WireRecord> reader) {
      WireRecord content = reader.apply(this);
      return good ? Optional.of(content) : Optional.empty();
    }

    String at(int index) {
      return index < texts.size() ? texts.get(index) : "";
    }

    void require(boolean condition) {
      good &= condition;
    }

    void count(int expected) {
      require(texts.size() == expected);
    }

    /** Fields hold no comma any more. */
    String word(int index) {
      String text = at(index);
      require(!text.isEmpty() && text.length() <= LONGEST_WORD);
      require(isAllOf(text, '!', '~') && text.indexOf('*') < 0);
      return text;
    }

    long unsigned(int index) {
      long value = isNumber(at(index), UNSIGNED_DIGITS) ? Long.parseLong(at(index)) : 0;
      require(value <= WireRecord.UINT32_MAX);
      return value;
    }

    int signed(int index) {
      String text = at(index);
      String digits = text.startsWith("-") ? text.substring(1) : text;
      return isNumber(digits, SIGNED_DIGITS) ? Integer.parseInt(text) : 0;
    }

    private boolean isNumber(String digits, int most) {
      boolean fits = !digits.isEmpty() && digits.length() <= most && isAllOf(digits, '0', '9');
      require(fits);
      return fits;
    }

    double rate(int index) {
      double hertz = RATE.matcher(at(index)).matches() ? Double.parseDouble(at(index)) : 0;
      require(hertz > 0);
      return hertz;
    }

    OptionalInt optional(int index) {
      return at(index).isEmpty() ? OptionalInt.empty() : OptionalInt.of(signed(index));
    }
  }
}

package org.thumbseal.fuzz;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.thumbseal.wire.Crc16;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineAssembler;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.RejectCause;
import org.thumbseal.wire.WireRecord;

/** Spoilt lines into the line assembler and the decoder. */
final class WireTarget implements Target {
  private static final List<WireKind> KINDS = List.of(WireKind.values());
  private static final Pattern FORMED = Pattern.compile("(?s).{0,91}\\*[0-9A-F]{4}");

  private final Map<WireKind, WireCounts> counts = new EnumMap<>(WireKind.class);

  WireTarget() {
    KINDS.forEach(kind -> counts.put(kind, new WireCounts()));
  }

  @Override
  public Attempt next(Dice dice) {
    WireKind kind = dice.of(KINDS);
    String line = Lines.any(dice);
    String donor = Lines.any(dice);
    byte[] spoilt = kind.spoilt(line, donor, dice);
    int cut = dice.below(spoilt.length);
    return new Reading(spoilt, input -> read(kind, List.of(line, donor), input, cut));
  }

  private void read(WireKind kind, List<String> sent, byte[] input, int cut) {
    LineAssembler assembler = new LineAssembler(line -> take(kind, sent, line));
    assembler.accept(input, 0, cut);
    assembler.accept(input, cut, input.length - cut);
    assembler.accept(new byte[] {'\n'}, 0, 1);
  }

  private void take(WireKind kind, List<String> sent, String line) {
    if (line.length() > 256) {
      throw new AssertionError("kept " + line.length() + " bytes of a line");
    }
    Decoded decoded = LineDecoder.decode(line);
    if (!sent.contains(line)) {
      counts
          .getOrDefault(kind, new WireCounts())
          .line(isFormed(line), passes(decoded), isGood(decoded), isSample(decoded));
    } else if (!isGood(decoded)) {
      throw new AssertionError("a line as it was sent is refused: " + line);
    }
    if (isGood(decoded)) {
      requireHonest(line);
    }
  }

  /** What is taken has the checksum of its body, worked out here without the decoder. */
  private static void requireHonest(String line) {
    int star = line.length() - 5;
    if (star < 0 || !Crc16.seal(line.substring(0, star)).equals(line)) {
      throw new AssertionError("taken without its checksum: " + line);
    }
  }

  private static boolean isFormed(String line) {
    return FORMED.matcher(line).matches();
  }

  private static boolean isGood(Decoded decoded) {
    return decoded instanceof Decoded.Good;
  }

  private static boolean isSample(Decoded decoded) {
    return decoded instanceof Decoded.Good good && good.content() instanceof WireRecord.Reading;
  }

  private static boolean passes(Decoded decoded) {
    return isGood(decoded)
        || (decoded instanceof Decoded.Rejected bad && bad.cause() == RejectCause.MALFORMED);
  }

  @Override
  public void settle() {
    counts.forEach(WireTarget::settle);
  }

  private static void settle(WireKind kind, WireCounts count) {
    if (kind.isAlwaysNoticed() && count.passed() > 0) {
      throw new AssertionError(
          kind + ": " + count.passed() + " passed a checksum that sees all such");
    }
    if (kind != WireKind.RESEALED && !count.isCredible()) {
      throw new AssertionError(kind + ": more passed than chance allows: " + count.row(kind));
    }
    if (kind == WireKind.BODY_RANDOM && !count.isCrediblyFew()) {
      throw new AssertionError("so few are no chance, the count must be wrong: " + count.row(kind));
    }
  }

  @Override
  public String figures() {
    StringBuilder text = new StringBuilder(WireCounts.head());
    counts.forEach((kind, count) -> text.append(count.row(kind)));
    return text.toString();
  }

  /** Lines as a sensor sends them. */
  private static final class Lines {
    static String any(Dice dice) {
      return Crc16.seal(
          switch (dice.below(12)) {
            case 0 ->
                "I,1,tp-0" + dice.below(10) + ",1.0.0,G,-115000,15000," + dice.between(10, 1_000);
            case 1 -> "A," + clock(dice) + "," + dice.between(60_000, 105_000) + ",2150";
            case 2 -> "K," + clock(dice) + "," + dice.below(2);
            case 3 -> "F," + clock(dice) + ",RANGE";
            default -> "S," + clock(dice) + "," + clock(dice) + "," + dice.between(-95_000, 300);
          });
    }

    private static long clock(Dice dice) {
      return (dice.bits() & 0xFFFF_FFFFL) >> dice.below(24);
    }
  }
}

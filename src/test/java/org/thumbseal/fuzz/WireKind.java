package org.thumbseal.fuzz;

import java.util.EnumSet;
import java.util.Set;
import org.thumbseal.wire.Crc16;

/** How a line of the wire is spoilt, and what its checksum is bound to notice. */
enum WireKind {
  BODY_ONE_BIT(Mutation.ONE_BIT, Place.BODY, true),
  BODY_TWO_BITS(Mutation.TWO_BITS, Place.BODY, true),
  BODY_BURST(Mutation.BURST, Place.BODY, true),
  /** Every byte of the body anew: what a checksum can only notice by chance. */
  BODY_RANDOM(null, Place.BODY, false),
  /** Some digits are other digits, so that the line would be a record if the checksum let it. */
  BODY_DIGITS(null, Place.BODY, false),
  LINE_ONE_BIT(Mutation.ONE_BIT, Place.LINE, true),
  LINE_TWO_BITS(Mutation.TWO_BITS, Place.LINE, false),
  LINE_BURST(Mutation.BURST, Place.LINE, false),
  LINE_RANDOM_BYTES(Mutation.RANDOM_BYTES, Place.LINE, false),
  LINE_SWAP(Mutation.SWAP, Place.LINE, false),
  LINE_CUT_END(Mutation.CUT_END, Place.LINE, false),
  LINE_CUT_BEGINNING(Mutation.CUT_BEGINNING, Place.LINE, false),
  LINE_DELETE(Mutation.DELETE, Place.LINE, false),
  LINE_DUPLICATE(Mutation.DUPLICATE, Place.LINE, false),
  LINE_SPLICE(Mutation.SPLICE, Place.LINE, false),
  LINE_NUMBER(Mutation.NUMBER, Place.LINE, false),
  LINE_TOKEN(Mutation.TOKEN, Place.LINE, false),
  LINE_BROKEN_UTF8(Mutation.BROKEN_UTF8, Place.LINE, false),
  LINE_LONG_RUN(Mutation.LONG_RUN, Place.LINE, false),
  /** Anything, with the right checksum put behind it: only the fields can be wrong. */
  RESEALED(null, Place.LINE, false);

  /** What is spoilt: the body alone, its checksum left as it was, or the whole line. */
  private enum Place {
    BODY,
    LINE
  }

  private static final Set<WireKind> OF_DIGITS = EnumSet.of(BODY_DIGITS);

  private final @org.jspecify.annotations.Nullable Mutation mutation;
  private final Place place;
  private final boolean noticed;

  WireKind(@org.jspecify.annotations.Nullable Mutation mutation, Place place, boolean noticed) {
    this.mutation = mutation;
    this.place = place;
    this.noticed = noticed;
  }

  /**
   * Whether the checksum notices every such fault: its polynomial has an even number of terms and
   * period 32767, so no error of an odd number of bits, of two bits less than 4 KB apart, or within
   * 16 bits is a multiple of it (W. W. Peterson, D. T. Brown, Cyclic Codes for Error Detection,
   * Proc. IRE 49, 1961). That holds for bits of body and checksum; the checksum goes over the wire
   * as four hexadecimal digits, in which one bit of the wire is one to three bits of the checksum.
   */
  boolean isAlwaysNoticed() {
    return noticed;
  }

  /** The spoilt line. */
  byte[] spoilt(String line, String donor, Dice dice) {
    String body = line.substring(0, line.length() - 5);
    String checksum = line.substring(line.length() - 5);
    if (this == RESEALED) {
      return Bytes.latin(Crc16.seal(Bytes.latin(someOf(body, donor, dice))));
    }
    return place == Place.BODY
        ? Bytes.join(inOneLine(Bytes.latin(body), dice), Bytes.latin(checksum))
        : whole(Bytes.latin(line), Bytes.latin(donor), dice);
  }

  private static byte[] someOf(String body, String donor, Dice dice) {
    return Mutation.some(Bytes.latin(body), Bytes.latin(donor), dice);
  }

  private byte[] whole(byte[] line, byte[] donor, Dice dice) {
    return mutation == null ? line : mutation.apply(line, donor, dice);
  }

  /** A line end in the body makes two lines, of which the second is another one altogether. */
  private byte[] inOneLine(byte[] body, Dice dice) {
    byte[] spoilt = body(body, dice);
    return Bytes.latin(spoilt).indexOf('\n') < 0 ? spoilt : body;
  }

  private byte[] body(byte[] body, Dice dice) {
    if (mutation != null) {
      return mutation.apply(body, body, dice);
    }
    return OF_DIGITS.contains(this) ? otherDigits(body, dice) : dice.bytes(body.length);
  }

  private static byte[] otherDigits(byte[] body, Dice dice) {
    byte[] out = body.clone();
    for (int i = 0; i < out.length; i++) {
      if (out[i] >= '0' && out[i] <= '9' && dice.oneIn(2)) {
        out[i] = (byte) ('0' + dice.below(10));
      }
    }
    return out;
  }
}

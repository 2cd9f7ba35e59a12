package org.thumbseal.fuzz;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One way to spoil an input. None looks at what the bytes mean, except for its digits. */
enum Mutation {
  ONE_BIT {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      return flipped(input, dice.below(input.length * 8));
    }
  },
  TWO_BITS {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      byte[] once = ONE_BIT.apply(input, donor, dice);
      byte[] twice = ONE_BIT.apply(once, donor, dice);
      return Arrays.equals(twice, input) ? once : twice;
    }
  },
  /** Up to 16 bits in a row, the first and the last of them wrong. */
  BURST {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int first = dice.below(input.length * 8);
      int last = Math.min(first + dice.between(1, 15), input.length * 8 - 1);
      byte[] out = flipped(input, first);
      for (int bit = first + 1; bit < last; bit++) {
        out = dice.oneIn(2) ? flipped(out, bit) : out;
      }
      return last > first ? flipped(out, last) : out;
    }
  },
  RANDOM_BYTES {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int from = dice.below(input.length);
      int to = Math.min(input.length, from + dice.between(1, 12));
      return Bytes.replaced(input, from, to, dice.bytes(to - from));
    }
  },
  SWAP {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      byte[] out = input.clone();
      int one = dice.below(out.length);
      int other = dice.below(out.length);
      out[one] = input[other];
      out[other] = input[one];
      return out;
    }
  },
  CUT_END {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      return Bytes.head(input, dice.below(input.length));
    }
  },
  CUT_BEGINNING {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      return Bytes.tail(input, dice.below(input.length));
    }
  },
  DELETE {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int from = dice.below(input.length);
      return Bytes.replaced(input, from, from + dice.between(1, 8), new byte[0]);
    }
  },
  DUPLICATE {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int from = dice.below(input.length);
      byte[] piece = Bytes.head(Bytes.tail(input, from), dice.between(1, 64));
      return Bytes.replaced(input, from, from, piece);
    }
  },
  SPLICE {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      byte[] head = Bytes.head(input, dice.below(input.length + 1));
      return Bytes.join(head, Bytes.tail(donor, dice.below(donor.length + 1)));
    }
  },
  NUMBER {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      return Numbers.mangled(input, dice);
    }
  },
  TOKEN {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int from = dice.below(input.length + 1);
      int to = dice.oneIn(2) ? from : Math.min(input.length, from + dice.between(1, 6));
      return Bytes.replaced(input, from, to, Tokens.any(dice));
    }
  },
  /** Overlong forms, halves of surrogate pairs, lone bytes of longer characters. */
  BROKEN_UTF8 {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int at = dice.below(input.length + 1);
      return Bytes.replaced(input, at, at, Tokens.brokenUtf8(dice));
    }
  },
  LONG_RUN {
    @Override
    byte[] apply(byte[] input, byte[] donor, Dice dice) {
      int at = dice.below(input.length + 1);
      byte[] run = new byte[1 << dice.between(5, dice.oneIn(50) ? 17 : 11)];
      Arrays.fill(run, dice.oneIn(2) ? input[at % input.length] : (byte) dice.below(256));
      return Bytes.replaced(input, at, at, run);
    }
  };

  private static final List<Mutation> ALL = List.of(values());

  /** Spoils an input; one without bytes stays as it is. */
  abstract byte[] apply(byte[] input, byte[] donor, Dice dice);

  /** One to four mutations one after another, single ones most often. */
  static byte[] some(byte[] input, byte[] donor, Dice dice) {
    byte[] out = input;
    for (int i = dice.oneIn(2) ? 1 : dice.between(1, 4); i > 0 && out.length > 0; i--) {
      out = dice.of(ALL).apply(out, donor, dice);
    }
    return out;
  }

  /** The same for text that has to stay text. */
  static String some(String input, String donor, Dice dice) {
    return new String(
        some(Bytes.of(input), Bytes.of(donor), dice), java.nio.charset.StandardCharsets.UTF_8);
  }

  private static byte[] flipped(byte[] input, int bit) {
    byte[] out = input.clone();
    out[bit / 8] ^= (byte) (1 << (7 - bit % 8));
    return out;
  }

  /** Where a run of digits begins and ends, chosen at random. */
  private static final class Numbers {
    private static final List<String> ODD =
        List.of(
            "NaN",
            "Infinity",
            "-Infinity",
            "1e400",
            "-1e400",
            "1e-400",
            "-0",
            "0",
            "-1",
            "00",
            "9007199254740992",
            "9007199254740993",
            "4294967295",
            "4294967296",
            "2147483648",
            "-2147483649",
            "9223372036854775807",
            "9223372036854775808",
            "1e999999999",
            "1E-999999999",
            "0.1000000000000000055511151231257827",
            "1.0",
            "+1",
            "0x10",
            ".5",
            "5.",
            "1_000",
            "1,5",
            "\u0661\u0662\u0663",
            "99999999999999999999999999999999",
            "1e2147483648");

    static byte[] mangled(byte[] input, Dice dice) {
      int[] run = run(input, dice);
      String old = Bytes.latin(Arrays.copyOfRange(input, run[0], run[1]));
      return Bytes.replaced(input, run[0], run[1], Bytes.of(other(old, dice)));
    }

    private static String other(String old, Dice dice) {
      return switch (dice.below(5)) {
        case 0 -> dice.of(ODD);
        case 1 -> old + old;
        case 2 -> Long.toString(dice.bits());
        case 3 -> old + "0".repeat(dice.between(1, 20));
        default -> "-" + old + "e" + dice.between(-400, 400);
      };
    }

    private static int[] run(byte[] input, Dice dice) {
      List<int[]> runs = new ArrayList<>();
      int from = -1;
      for (int i = 0; i <= input.length; i++) {
        boolean digit = i < input.length && input[i] >= '0' && input[i] <= '9';
        if (digit && from < 0) {
          from = i;
        } else if (!digit && from >= 0) {
          runs.add(new int[] {from, i});
          from = -1;
        }
      }
      int nowhere = dice.below(input.length);
      return runs.isEmpty() ? new int[] {nowhere, nowhere} : dice.of(runs);
    }
  }
}

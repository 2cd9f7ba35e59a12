package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The parser's loops against the protocol written once more, as patterns. */
class BodyShapesTest {
  private static final String UNSIGNED = "(?:[0-9]{1,9}|[0-3][0-9]{9}|4[0-9]{9})";
  private static final String WORD = "[!-~&&[^,*]]{1,32}";
  private static final Pattern KNOWN =
      Pattern.compile(
          Stream.of(
                  "S,(?<a>U),(?<b>U),-?[0-9]{1,9}",
                  "A,(?<c>U),(?:-?[0-9]{1,9})?,(?:-?[0-9]{1,9})?",
                  "K,(?<d>U),[01]",
                  "F,(?<e>U),W")
              .map(shape -> shape.replace("U", UNSIGNED).replace("W", WORD))
              .reduce((one, other) -> one + "|" + other)
              .orElseThrow());
  private static final List<String> SEEDS =
      List.of(
          "S,4294967295,4294967295,-80012",
          "S,0,9704,123456789",
          "A,1200345,87510,3120",
          "A,1200345,,",
          "K,1300000,1",
          "F,1500000,VALVE-2");
  private static final String ALPHABET = "0123456789-,SAKF *~!\u007f\u00e9+. 49";
  private static final long SEED = 40;

  private static boolean isKnown(String body) {
    var matcher = KNOWN.matcher(body);
    if (!matcher.matches()) {
      return false;
    }
    return Stream.of("a", "b", "c", "d", "e")
        .map(matcher::group)
        .filter(number -> number != null)
        .allMatch(number -> Long.parseLong(number) <= 4_294_967_295L);
  }

  @Test
  void whatIsAndWhatIsNotOneOfTheRecordsIsTheSameByPatterns() {
    Random random = new Random(SEED);
    int known = 0;
    for (int i = 0; i < 200_000; i++) {
      StringBuilder body = new StringBuilder(SEEDS.get(random.nextInt(SEEDS.size())));
      for (int changes = random.nextInt(4); changes > 0; changes--) {
        change(body, random);
      }
      String text = body.toString();
      if (text.split(",", 2)[0].matches("[SAKF]")) {
        boolean expected = isKnown(text);
        known += expected ? 1 : 0;
        boolean good = LineDecoder.decode(Crc16.seal(text)) instanceof Decoded.Good;
        assertThat(good).as("number %d of seed %d: %s", i, SEED, text).isEqualTo(expected);
      }
    }
    assertThat(known).isBetween(40_000, 160_000);
  }

  private static void change(StringBuilder body, Random random) {
    int at = random.nextInt(body.length());
    char other = ALPHABET.charAt(random.nextInt(ALPHABET.length()));
    switch (random.nextInt(3)) {
      case 0 -> body.setCharAt(at, other);
      case 1 -> body.insert(at, other);
      default -> body.deleteCharAt(at);
    }
  }
}

package org.thumbseal.wire;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.capture.CaptureLine;

/** Holds the firmware notes to what the decoder does, so that neither moves without the other. */
class FirmwareNotesTest {
  private static final Pattern LINK = Pattern.compile("]\\(([^)#:]+)\\)");

  /** One line of a {@code wire} block: what is sent, and what the notes say becomes of it. */
  record Example(String line, String outcome) {
    static Example parse(String text) {
      String[] sides = text.split(" +=> ", 2);
      assertThat(sides).as(text).hasSize(2);
      String unescaped = CaptureLine.parse("0.000000 " + sides[0]).orElseThrow().text();
      return new Example(unescaped, sides[1]);
    }

    String kind() {
      return outcome.split(" ", 2)[0];
    }
  }

  static Stream<Example> examples() {
    return FencedBlock.ofNotes("wire").stream()
        .flatMap(block -> block.lines().stream())
        .map(Example::parse);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void aLineIsDecodedAsTheNotesSay(Example example) {
    assertThat(InWords.of(LineDecoder.decode(example.line()))).isEqualTo(example.outcome());
  }

  @Test
  void theExamplesShowEveryRecordAndEveryCauseThatOneLineCanHave() {
    Set<String> expected =
        Arrays.stream(RejectCause.values())
            .filter(cause -> cause != RejectCause.IMPLAUSIBLE) // needs the lines before it
            .map(RejectCause::code)
            .collect(Collectors.toSet());
    expected.addAll(List.of("identity", "sample", "ambient", "key", "fault", "unknown"));
    assertThat(examples().map(Example::kind).collect(Collectors.toSet())).isEqualTo(expected);
  }

  @Test
  void theBytesAreThoseOfTheLineAboveThem() {
    List<String> block = only("bytes");
    String line = block.get(0).replaceAll("\\s+|LF$", "");
    assertThat(examples().map(Example::line)).contains(line);
    assertThat(HexFormat.ofDelimiter(" ").withUpperCase().formatHex(octets(line + "\n")))
        .isEqualTo(block.get(1));
  }

  @Test
  void theChecksumByHandIsThatOfADivisionOfPolynomials() {
    assertThat(only("crc-bits")).isEqualTo(byHand('Z'));
    assertThat(wireProtocol()).contains("`" + Crc16.seal("Z") + "`");
  }

  @Test
  void theChecksumAfterEachByteIsThatOfTheBodySoFar() {
    String body = "K,0,1";
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < body.length(); i++) {
      char octet = body.charAt(i);
      rows.add("%c %02X %04X".formatted(octet, (int) octet, Crc16.of(body.substring(0, i + 1))));
    }
    assertThat(only("crc-bytes")).isEqualTo(rows);
  }

  @Test
  void theRoutineInTheNotesIsTheOneThatTheFirmwareUses() {
    String routine = String.join("\n", only("c"));
    assertThat(routine).contains("0x1021");
    assertThat(FencedBlock.read(FencedBlock.NOTES.resolve("firmware/core/crc16.c")))
        .contains(routine);
  }

  @Test
  void everyFileThatTheNotesPointToIsThere() {
    List<String> targets = FencedBlock.notes().stream().flatMap(this::targets).toList();
    assertThat(targets).hasSizeGreaterThan(6);
    assertThat(targets).allMatch(target -> Files.exists(FencedBlock.NOTES.resolve(target)));
  }

  /** The checksum of one byte as a remainder of 32 bits, which needs no register to be shifted. */
  private static List<String> byHand(char octet) {
    int start = 0xFFFF ^ (octet << 8);
    List<String> rows = new ArrayList<>();
    rows.add("byte FFFF xor %02X00 = %04X".formatted((int) octet, start));
    for (int bit = 1; bit <= 8; bit++) {
      rows.add(row(bit, remainder(start, bit - 1)));
    }
    return rows;
  }

  private static String row(int bit, int before) {
    int top = before >> 15;
    String shifted = "bit %d top %d shifted %04X".formatted(bit, top, (before << 1) & 0xFFFF);
    return top == 0 ? shifted : shifted + " xor 1021 = %04X".formatted(remainder(before, 1));
  }

  /** What is left of {@code value * x^power} after division by x^16 + x^12 + x^5 + 1. */
  private static int remainder(int value, int power) {
    long left = (long) value << power;
    for (int degree = 31; degree >= 16; degree--) {
      left ^= ((left >> degree) & 1) == 0 ? 0 : 0x11021L << (degree - 16);
    }
    return (int) left;
  }

  private static List<String> only(String language) {
    List<FencedBlock> blocks = FencedBlock.ofNotes(language);
    assertThat(blocks).as(language).hasSize(1);
    return blocks.get(0).lines();
  }

  private static byte[] octets(String text) {
    return text.getBytes(ISO_8859_1);
  }

  private static String wireProtocol() {
    return FencedBlock.read(FencedBlock.NOTES.resolve("wire-protocol.md"));
  }

  private Stream<String> targets(Path note) {
    return LINK.matcher(FencedBlock.read(note)).results().map((MatchResult m) -> m.group(1));
  }
}

package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineAssemblerTest {
  private static final String STREAM =
      "half a li\nS,0,1,-35*EAE5\r\n\n\r\n\u0083*\u00ff\\\r\r\nS,1,2,0*33CE\n" + "no end";
  private static final List<String> LINES =
      List.of("half a li", "S,0,1,-35*EAE5", "", "", "\u0083*\u00ff\\\r", "S,1,2,0*33CE");

  @ParameterizedTest
  @MethodSource("everySize")
  void givesTheSameLinesInChunksOfEverySize(int size) {
    assertThat(lines(STREAM, size)).isEqualTo(LINES);
  }

  @Test
  void takesOnlyThePartOfTheBufferThatIsMeant() {
    List<String> lines = new ArrayList<>();
    new LineAssembler(lines::add).accept(bytes("xxab\ncd\nyy"), 2, 6);
    assertThat(lines).containsExactly("ab", "cd");
  }

  @Test
  void keepsNoMoreOfAnEndlessLineThanShowsThatItIsTooLong() {
    List<String> lines = new ArrayList<>();
    LineAssembler assembler = new LineAssembler(lines::add);
    byte[] chunk = bytes("x".repeat(10_000));
    for (int i = 0; i < 100; i++) {
      assembler.accept(chunk, 0, chunk.length);
    }
    assembler.accept(bytes("\nS,1,2,0*33CE\n"), 0, 14);
    assertThat(lines).containsExactly("x".repeat(256), "S,1,2,0*33CE");
    assertThat(LineDecoder.decode(lines.get(0)))
        .isEqualTo(new Decoded.Rejected(RejectCause.TOO_LONG));
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n"})
  void theLineEndDoesNotCountForTheLengthOfALine(String end) {
    String line = Crc16.seal("Z," + "x".repeat(89));
    assertThat(lines(line + end, 7)).containsExactly(line);
  }

  static List<Integer> everySize() {
    return java.util.stream.IntStream.rangeClosed(1, STREAM.length()).boxed().toList();
  }

  private static List<String> lines(String stream, int chunk) {
    List<String> lines = new ArrayList<>();
    LineAssembler assembler = new LineAssembler(lines::add);
    byte[] bytes = bytes(stream);
    for (int from = 0; from < bytes.length; from += chunk) {
      assembler.accept(bytes, from, Math.min(chunk, bytes.length - from));
    }
    return lines;
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}

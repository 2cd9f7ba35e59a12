package org.thumbseal.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureLineTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.012345 S,0,1200345,-35*EAE5",
        "0.000000 ",
        "12345.999999  two spaces ",
        "0.004126 \\x83*e(\\x0F\\x9E\\x9DPV/.4\\xE0\\xB0e\\xCB\\xBA\\xF6(y\\xE0\\x9D\\x5C<J"
      })
  void readsAndWritesTheSame(String form) {
    CaptureLine line = CaptureLine.parse(form).orElseThrow();
    assertThat(line.format()).isEqualTo(form);
  }

  @Test
  void countsMicrosecondsAndUndoesTheEscapes() {
    assertThat(CaptureLine.parse("3.000007 a\\x5Cx41\\x00\\xFF"))
        .contains(new CaptureLine(3_000_007, "a\\x41\u0000\u00ff"));
  }

  @Test
  void keepsEveryByteThereIs() {
    String bytes =
        IntStream.range(0, 256).mapToObj(Character::toString).collect(Collectors.joining());
    String form = new CaptureLine(1, bytes).format();
    assertThat(form).matches("[ -~]+");
    assertThat(CaptureLine.parse(form)).contains(new CaptureLine(1, bytes));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "0.012345",
        "0.01234 x",
        "0.0123456 x",
        ".012345 x",
        "-1.000000 x",
        "0,012345 x",
        "0.01234x x",
        "99999999999.000000 x",
        "\u0660.012345 x",
        "0.012345 \\",
        "0.012345 \\x",
        "0.012345 \\x4",
        "0.012345 \\x4g",
        "0.012345 \\xff",
        "0.012345 \\n",
        "0.012345 \u00e9",
        "0.012345 \u20ac",
        "0.012345 a\tb"
      })
  void isEmptyForWhatIsNoLine(String form) {
    assertThat(CaptureLine.parse(form)).isEmpty();
  }

  @Test
  void refusesWhatAFileCouldNotHold() {
    assertThatThrownBy(() -> new CaptureLine(-1, "x")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new CaptureLine(0, "\u20ac"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

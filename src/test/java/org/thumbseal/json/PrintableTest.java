package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PrintableTest {
  /** ECMA-48 escape sequences, C1 controls, and the bidirectional controls of Unicode UAX 9. */
  @ParameterizedTest
  @CsvSource({
    "'a\u001b[2Jb', 'a\\u001B[2Jb'",
    "'\u009b2J', '\\u009B2J'",
    "'a\nb\r', 'a\\u000Ab\\u000D'",
    "'\u202egnp', '\\u202Egnp'",
    "'\u2066x\u2069', '\\u2066x\\u2069'",
    "'\u2028', '\\u2028'",
    "'\ud800', '\\uD800'",
    "'\u0000', '\\u0000'"
  })
  void whatSteersATerminalIsSpelledOut(String text, String line) {
    assertThat(Printable.line(text)).isEqualTo(line);
  }

  @Test
  void wordsOfAnyScriptStay() {
    String text = "Süd 3 – 吸引器 مضخة \ud83d\ude00";

    assertThat(Printable.line(text)).isEqualTo(text);
  }

  @Test
  void longTextIsCut() {
    assertThat(Printable.line("x".repeat(401))).isEqualTo("x".repeat(400) + "...");
    assertThat(Printable.line("x".repeat(400))).isEqualTo("x".repeat(400));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a-b_1.json", "", "A. Miller", "it's", "$HOME `id` \"q\" * \\ ~ !", "-x"})
  void aWordIsReadByAShellAsItIs(String text) throws Exception {
    Process shell =
        new ProcessBuilder("sh", "-c", "printf '%s|' " + Printable.word(text) + " end").start();

    assertThat(shell.inputReader().readLine()).isEqualTo(text + "|end|");
  }
}

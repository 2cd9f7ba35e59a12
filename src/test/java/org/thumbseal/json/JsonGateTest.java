package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;

class JsonGateTest {
  static Stream<Arguments> hostile() {
    return Stream.of(
        arguments("nothing", "", "is not a JSON object"),
        arguments("white space", " \n", "is not a JSON object"),
        arguments("array", "[1]", "is not a JSON object"),
        arguments("literal", "null", "is not a JSON object"),
        arguments("cut off", "{\"a\":", "is not JSON: line 1"),
        arguments("name twice", "{\"a\":1,\"a\":2}", "Duplicate Object property \"a\""),
        arguments("name twice, escaped", "{\"a\":1,\"\\u0061\":2}", "Duplicate Object property"),
        arguments("name twice, deep", "{\"b\":[{\"a\":1,\"a\":1}]}", "Duplicate Object property"),
        arguments("something after", "{} x", "is not JSON"),
        arguments("second document", "{}{}", "is not JSON"),
        arguments("NaN", "{\"a\":NaN}", "Non-standard token 'NaN'"),
        arguments("infinity", "{\"a\":-Infinity}", "Non-standard token"),
        arguments("1e400", "{\"a\":1e400}", "too large"),
        arguments("1e-400", "{\"a\":1e-400}", "more digits than a double holds"),
        arguments("exponent out of bounds", "{\"a\":1e99999999999}", "out of all bounds"),
        arguments("2^53 + 1", "{\"a\":9007199254740993}", "beyond 2^53 - 1"),
        arguments("2^53", "{\"a\":9007199254740992}", "beyond 2^53 - 1"),
        arguments("-2^53", "{\"a\":-9007199254740992}", "beyond 2^53 - 1"),
        arguments("a digit too many", "{\"a\":333333333.33333326}", "more digits"),
        arguments("leading zero", "{\"a\":01}", "Leading zeroes not allowed"),
        arguments("plus sign", "{\"a\":+1}", "is not JSON"),
        arguments("hexadecimal", "{\"a\":0x10}", "is not JSON"),
        arguments("comment", "{/**/}", "is not JSON"),
        arguments("comma at the end", "{\"a\":1,}", "is not JSON"),
        arguments("single quotes", "{'a':1}", "is not JSON"),
        arguments("control character", "{\"a\":\"\u0001\"}", "is not JSON"),
        arguments("byte order mark", "\ufeff{}", "byte order mark"),
        arguments("lone surrogate", "{\"a\":\"\\ud800\"}", "surrogate"),
        arguments("lone surrogate in a name", "{\"\\udfff\":1}", "surrogate"),
        arguments("depth 10 000", "[".repeat(10_000), "depth (65) exceeds"),
        arguments("depth 10 000 of objects", "{\"a\":".repeat(10_000), "depth (65) exceeds"),
        arguments("string of 70 000", text("x".repeat(70_000)), "String value length"),
        arguments("number of 100 digits", "{\"a\":" + "1".repeat(100) + "}", "Number value length"),
        arguments("larger than a document", text("x".repeat(1 << 20)), "is larger than 1048576"));
  }

  private static String text(String value) {
    return "{\"a\":\"" + value + "\"}";
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void hostile(String what, String text, String reason) {
    assertThatThrownBy(() -> JsonGate.read(text.getBytes(StandardCharsets.UTF_8)))
        .as(what)
        .isInstanceOf(JsonRefusedException.class)
        .hasMessageContaining(reason)
        .hasMessageNotContainingAny("\n", "REDACTED", "StreamRead", "tools.jackson", "enable `");
  }

  /** RFC 3629 section 3: overlong forms, surrogates, beyond 10FFFF, bytes that never appear. */
  @ParameterizedTest
  @ValueSource(strings = {"c0af", "e080af", "eda080", "f4908080", "ff", "80", "c3"})
  void bytesThatAreNotUtf8(String hex) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes("{\"a\":\"".getBytes(StandardCharsets.US_ASCII));
    bytes.writeBytes(java.util.HexFormat.of().parseHex(hex));
    bytes.writeBytes("\"}".getBytes(StandardCharsets.US_ASCII));

    assertThatThrownBy(() -> JsonGate.read(bytes.toByteArray()))
        .isInstanceOf(JsonRefusedException.class)
        .hasMessage("is not UTF-8 text");
  }

  /** A sign on zero says nothing, and RFC 8785 writes it as 0. */
  @ParameterizedTest
  @ValueSource(strings = {"{\"a\":-0}", "{\"a\":-0.0}", "{\"a\":0e9}"})
  void zeroWithASignIsZero(String text) throws Exception {
    assertThat(Canonical.text(JsonGate.read(text.getBytes(StandardCharsets.UTF_8))))
        .isEqualTo("{\"a\":0}");
  }

  @Test
  void messagesCarryNoControlCharacters() {
    byte[] bytes = "{\"a\\u001b[2J\":1,\"a\\u001b[2J\":2}".getBytes(StandardCharsets.UTF_8);

    assertThatThrownBy(() -> JsonGate.read(bytes)).message().matches("\\P{Cntrl}*");
  }

  @Test
  void filesThatCannotBeRead(@TempDir Path folder) throws Exception {
    assertThatThrownBy(() -> JsonGate.read(folder.resolve("none"))).hasMessage("no such file");
    assertThatThrownBy(() -> JsonGate.read(folder)).hasMessage("is a directory, not a file");
    Path large = Files.write(folder.resolve("large"), new byte[JsonGate.LARGEST + 1]);
    assertThatThrownBy(() -> JsonGate.read(large)).hasMessageContaining("is larger than");
  }

  /**
   * Whatever is done to a document, it is read or refused, and what is read has a canonical form.
   */
  @Test
  void mutatedDocumentsNeverEscapeTheGate() {
    long seed = 0x5ea1;
    SplittableRandom random = new SplittableRandom(seed);
    byte[] document = Canonical.bytes(ExampleDocument.unsealed());
    for (int i = 0; i < 20_000; i++) {
      byte[] mutant = mutate(document, random);
      try {
        assertThat(Canonical.bytes(JsonGate.read(mutant))).isNotEmpty();
      } catch (JsonRefusedException e) {
        assertThat(e).hasMessageMatching("\\P{Cntrl}+");
      } catch (RuntimeException e) {
        throw new AssertionError("seed " + seed + ", mutant " + i, e);
      }
    }
  }

  /**
   * The reference is Jackson's own mapper; only what it says of a second value is worded otherwise.
   */
  @Test
  void aTreeIsWhatTheMapperWouldMakeOfIt() {
    SplittableRandom random = new SplittableRandom(0x7ee);
    byte[] document = Canonical.bytes(ExampleDocument.unsealed());
    int read = 0;
    for (int i = 0; i < 20_000; i++) {
      String mutant = new String(mutate(document, random), StandardCharsets.UTF_8);
      String expected = said(() -> Json.mapper().readTree(mutant));
      assertThat(said(() -> Json.tree(mutant))).isEqualTo(expected);
      read += expected.startsWith("{") ? 1 : 0;
    }
    assertThat(read).isBetween(2_000, 18_000);
  }

  /** RFC 8259: every kind of value, and numbers at the ends of Java's own kinds. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "[]", "{}", "[{},[],[[1]],{\"a\":{\"b\":[true,false,null]}}]", "\"\\u00e9\\n\"", "0", "-0",
            "1.50",
        "1e2", "-0.0", "1E-7", "2147483647", "2147483648", "-2147483649", "9223372036854775807",
        "9223372036854775808", "123456789012345678901234567890", "0.1000", "1e400", "null"
      })
  void aValueIsWhatTheMapperWouldMakeOfIt(String text) {
    JsonNode expected = Json.mapper().readTree(text);

    assertThat(Json.tree(text))
        .isEqualTo(expected)
        .hasSameClassAs(expected)
        .hasToString(text(expected));
  }

  private static String text(JsonNode tree) {
    return tree.toString();
  }

  private static String said(Supplier<@Nullable JsonNode> reading) {
    try {
      JsonNode tree = reading.get();
      return tree == null || tree.isMissingNode() ? "nothing" : tree.toString();
    } catch (JacksonException e) {
      boolean second = e.getOriginalMessage().matches("(?s)Trailing token.*|something follows.*");
      return second ? "a second value" : e.getOriginalMessage();
    } catch (RuntimeException e) {
      return e.getClass().getName();
    }
  }

  private static byte[] mutate(byte[] document, SplittableRandom random) {
    byte[] mutant = document.clone();
    for (int n = random.nextInt(1, 4); n > 0; n--) {
      mutant[random.nextInt(mutant.length)] = (byte) random.nextInt(256);
    }
    int from = random.nextInt(mutant.length);
    int length = random.nextInt(8);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(mutant, 0, from);
    int rest = Math.min(mutant.length, from + (random.nextBoolean() ? length : 0));
    out.write(mutant, rest, mutant.length - rest);
    return out.toByteArray();
  }
}

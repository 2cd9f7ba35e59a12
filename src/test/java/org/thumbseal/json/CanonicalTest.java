package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Objects in canonical form against published samples. */
class CanonicalTest {
  /**
   * Test data of cyberphone/json-canonicalization (commit 19d51d7f): arrays, french is left out for
   * its length, structures, values (also RFC 8785 section 3.2.2), unicode; and the key order of RFC
   * 8785 section 3.2.3. An array is wrapped, because a document is always an object.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"a\":[56,{\"d\":true,\"10\":null,\"1\":[ ]}]}"
            + "|{\"a\":[56,{\"1\":[],\"10\":null,\"d\":true}]}",
        "{\"1\":{\"f\":{\"f\":\"hi\",\"F\":5},\"\\n\":56.0},\"10\":{},\"\":\"empty\",\"a\":{},"
            + "\"111\":[{\"e\":\"yes\",\"E\":\"no\"}],\"A\":{}}"
            + "|{\"\":\"empty\",\"1\":{\"\\n\":56,\"f\":{\"F\":5,\"f\":\"hi\"}},\"10\":{},"
            + "\"111\":[{\"E\":\"no\",\"e\":\"yes\"}],\"A\":{},\"a\":{}}",
        "{\"string\":\"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\","
            + "\"literals\":[null,true,false]}"
            + "|{\"literals\":[null,true,false],"
            + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        "{\"numbers\":[1E30,4.50,2e-3,0.000000000000000000000000001]}"
            + "|{\"numbers\":[1e+30,4.5,0.002,1e-27]}",
        "{\"Unnormalized Unicode\":\"A\\u030a\"}|{\"Unnormalized Unicode\":\"A\u030a\"}",
        "{\"\\u20ac\":\"Euro Sign\",\"\\r\":\"Carriage Return\",\"\\ufb33\":\"Hebrew\",\"1\":\"One\","
            + "\"\\ud83d\\ude00\":\"Smiley\",\"\\u0080\":\"Control\",\"\\u00f6\":\"Latin\"}"
            + "|{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
            + "\"\u00f6\":\"Latin\",\"\u20ac\":\"Euro Sign\",\"\ud83d\ude00\":\"Smiley\","
            + "\"\ufb33\":\"Hebrew\"}"
      })
  void publishedSamples(String input, String canonical) throws Exception {
    assertThat(Canonical.text(JsonGate.read(input.getBytes(StandardCharsets.UTF_8))))
        .isEqualTo(canonical);
  }

  @Test
  void whiteSpaceOrderAndSpellingOfNumbersDoNotMatter() throws Exception {
    String one = "{\"a\":1.50,\"b\":[100,\"\\u0041\"]}";
    String other = "\r\n{ \"b\" : [ 1e2 , \"A\" ],\t\"a\":15E-1 }\n";

    assertThat(Canonical.bytes(JsonGate.read(one.getBytes(StandardCharsets.UTF_8))))
        .isEqualTo(Canonical.bytes(JsonGate.read(other.getBytes(StandardCharsets.UTF_8))));
  }

  @Test
  void theCanonicalFormReadsBackAsItself() throws Exception {
    String text = Canonical.text(ExampleDocument.unsealed());

    assertThat(Canonical.text(JsonGate.read(text.getBytes(StandardCharsets.UTF_8))))
        .isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\ud800", "a\udc00b", "\udc00\ud800"})
  void halfASurrogatePairIsAnError(String text) {
    assertThatThrownBy(() -> Canonical.text(Json.object().put("s", text)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("surrogate");
    assertThatThrownBy(() -> Canonical.text(Json.object().put(text, 1)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void numbersThatWouldChangeAreAnError() {
    assertThatThrownBy(() -> Canonical.text(Json.object().put("n", (1L << 53))))
        .hasMessageContaining("2^53");
    assertThatThrownBy(
            () -> Canonical.text(Json.object().put("n", new BigDecimal("0.12345678901234567891"))))
        .hasMessageContaining("more digits");
    assertThat(Canonical.text(Json.object().put("n", (1L << 53) - 1)))
        .isEqualTo("{\"n\":9007199254740991}");
  }
}

package org.thumbseal.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class ResultIdTest {
  /** SHA-256 of nothing (FIPS 180-4, as every implementation gives it). */
  private static final String NOTHING =
      "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

  /** RFC 9562 5.8: version 8 in bits 48 to 51, variant 10 in bits 64 and 65, the rest is free. */
  @Test
  void isTheDigestWithVersionAndVariant() {
    String id = ResultId.of(NOTHING, 1);

    assertThat(id).isEqualTo("e3b0c442-98fc-8c14-9afb-f4c8996fb924");
    assertThat(UUID.fromString(id).version()).isEqualTo(8);
    assertThat(UUID.fromString(id).variant()).isEqualTo(2);
  }

  @Test
  void testsOfOneCaptureHaveIdsOfTheirOwn() {
    Set<String> ids = new HashSet<>();
    for (int ordinal = 1; ordinal <= 1_000; ordinal++) {
      String id = ResultId.of(NOTHING, ordinal);
      assertThat(UUID.fromString(id).version()).isEqualTo(8);
      ids.add(id);
    }
    assertThat(ids).hasSize(1_000);
  }

  @Test
  void anotherCaptureHasAnother() {
    assertThat(ResultId.of("f" + NOTHING.substring(1), 1)).isNotEqualTo(ResultId.of(NOTHING, 1));
  }
}

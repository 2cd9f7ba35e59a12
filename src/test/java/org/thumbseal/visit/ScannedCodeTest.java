package org.thumbseal.visit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.visit.BadScanException.Cause;
import org.thumbseal.visit.ScannedCode.From;

class ScannedCodeTest {
  /**
   * The example of a UDI in the tables of GS1 and FDA ("UDI formats by FDA-accredited issuing
   * agency"): {@code (01)51022222233336(11)141231(17)150707(10)A213B1(21)1234}.
   */
  private static final String EXAMPLE = "(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234";

  private static final String DEVICE = "(01)51022222233336(21)1234";

  @ParameterizedTest
  @ValueSource(
      strings = {
        EXAMPLE,
        "  " + EXAMPLE + "\r\n",
        "(01) 51022222233336 (21) 1234",
        "(21)1234(01)51022222233336",
        "(01)51022222233336(21)1234(240)spare part",
        "]C10151022222233336111412311715070710A213B1\u001D211234",
        "]d20151022222233336111412311715070710A213B1\u001D211234\n",
        "]Q30151022222233336211234\u001D",
        "]e0\u001D0151022222233336211234",
        "0151022222233336111412311715070710A213B1\u001D211234",
        "0151022222233336211234",
      })
  void theDeviceOfAGs1CodeIsItsGtinAndSerial(String scanned) throws Exception {
    assertThat(ScannedCode.of(scanned)).isEqualTo(new ScannedCode(DEVICE, From.GS1));
  }

  /** What was read from a label is in the record then, and is read again from there. */
  @Test
  void theIdReadsAsItself() throws Exception {
    assertThat(ScannedCode.of(DEVICE).asset()).isEqualTo(DEVICE);
  }

  @Test
  void anAssetNumberOfItsOwnNamesADevice() throws Exception {
    assertThat(ScannedCode.of("]C1800451022222SP-014").asset()).isEqualTo("(8004)51022222SP-014");
  }

  @ParameterizedTest
  @CsvSource({
    "SP-014,                  SP-014",
    "'  SP-014\t',            SP-014",
    "]C0SP-014,               SP-014",
    "Pompe n° 7 (réserve),    Pompe n° 7 (réserve)",
    "(12) of the ward,        (12) of the ward",
    "0151022222233337211234,  0151022222233337211234",
    "01510222222333,          01510222222333",
  })
  void anyOtherTextIsPlain(String typed, String asset) throws Exception {
    assertThat(ScannedCode.of(typed)).isEqualTo(new ScannedCode(asset, From.PLAIN));
  }

  /** Each single digit changed, and each pair of unlike neighbours swapped unless 5 apart. */
  @Test
  void theCheckDigitTellsEveryWrongDigit() {
    String gtin = "51022222233336";
    for (int i = 0; i < gtin.length(); i++) {
      for (char digit = '0'; digit <= '9'; digit++) {
        if (digit != gtin.charAt(i)) {
          String wrong = gtin.substring(0, i) + digit + gtin.substring(i + 1);
          refuses("(01)" + wrong + "(21)1234", Cause.BAD_CODE);
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "(01)51022222233336,                          NO_SERIAL",
    "(01)51022222233336(10)A213B1,                NO_SERIAL",
    "]C10151022222233336,                         NO_SERIAL",
    "(21)1234,                                    BAD_CODE",
    "(01)5102222223333(21)1234,                   BAD_CODE",
    "(01)51022222233336(21),                      BAD_CODE",
    "(01)51022222233336(21)123456789012345678901, BAD_CODE",
    "(01)51022222233336(17)151307(21)1234,        BAD_CODE",
    "(01)51022222233336(21)1234(21)1235,          BAD_CODE",
    "(01)51022222233336(21)n°1,                   BAD_CODE",
    "]C19951022222233336,                         BAD_CODE",
    "'',                                          BAD_ASSET",
    "']C0',                                       BAD_ASSET",
  })
  void whatNamesNoDeviceIsRefused(String scanned, Cause cause) {
    refuses(scanned, cause);
  }

  @ParameterizedTest
  @ValueSource(strings = {"a\u0007b", "a\nb", "a\uD800b", "a\u2028b", "\u001B[31m"})
  void charactersThatAreNoneAreRefused(String typed) {
    refuses(typed, Cause.BAD_ASSET);
    refuses("x".repeat(101), Cause.BAD_ASSET);
  }

  private static void refuses(String scanned, Cause cause) {
    assertThatThrownBy(() -> ScannedCode.of(scanned))
        .as(scanned)
        .isInstanceOfSatisfying(
            BadScanException.class, e -> assertThat(e.reason()).isEqualTo(cause))
        .message()
        .matches("[a-z].{20,}")
        .doesNotContain("\n");
  }
}

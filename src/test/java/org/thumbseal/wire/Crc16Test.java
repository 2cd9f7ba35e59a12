package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class Crc16Test {
  /** CRC catalogue, CRC-16/IBM-3740: check value of the nine digits. */
  @Test
  void givesTheCheckValueOfTheCatalogue() {
    assertThat(Crc16.of("123456789")).isEqualTo(0x29B1);
  }

  /** The empty input leaves the register at its start value. */
  @Test
  void startsAtAllOnes() {
    assertThat(Crc16.of("")).isEqualTo(0xFFFF);
  }

  /** Lines of recorded captures, sealed by another implementation. */
  @Test
  void sealsAsOtherImplementationsDo() {
    assertThat(Crc16.seal("S,0,1200345,56")).isEqualTo("S,0,1200345,56*AECD");
    assertThat(Crc16.seal("A,1200345,101325,2310")).isEqualTo("A,1200345,101325,2310*7F06");
    assertThat(Crc16.seal("S,0,1200345,-35")).isEqualTo("S,0,1200345,-35*EAE5");
  }

  @Test
  void writesFourUpperCaseDigitsWhateverTheValue() {
    assertThat(Crc16.hex(0x0A0B)).isEqualTo("0A0B");
    assertThat(Crc16.hex(0)).isEqualTo("0000");
  }

  /** A CRC of 16 bits finds every change of one bit; the polynomial divides no x^n. */
  @Test
  void noticesEverySingleBit() {
    String body = "S,4294967295,4285967354,-93044";
    int crc = Crc16.of(body);
    for (int bit = 0; bit < 8 * body.length(); bit++) {
      StringBuilder changed = new StringBuilder(body);
      changed.setCharAt(bit / 8, (char) (body.charAt(bit / 8) ^ (1 << (bit % 8))));
      assertThat(Crc16.of(changed)).as("bit %d", bit).isNotEqualTo(crc);
    }
  }
}

package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The link for a tablet names this machine as the tablet can reach it; addresses of RFC 5737. */
class NeighboursTest {
  @ParameterizedTest
  @CsvSource({
    "127.0.0.1 ::1, 127.0.0.1",
    "127.0.0.1 192.0.2.7, 192.0.2.7",
    "192.0.2.7 10.0.0.4, 10.0.0.4",
    "169.254.3.3 fe80::1 2001:db8::5, 127.0.0.1",
    "169.254.3.3 203.0.113.9, 203.0.113.9"
  })
  void theLinkNamesAnAddressThatOthersReach(String all, String best) {
    assertThat(Neighbours.best(Stream.of(all.split(" ")).map(NeighboursTest::address)))
        .isEqualTo(best);
  }

  private static InetAddress address(String literal) {
    try {
      return InetAddress.getByName(literal);
    } catch (java.net.UnknownHostException e) {
      throw new IllegalArgumentException(e);
    }
  }
}

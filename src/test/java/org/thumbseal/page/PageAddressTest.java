package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.BindException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PageAddressTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "8651,            127.0.0.1, 8651, true",
    "localhost:80,    localhost, 80,   true",
    "0.0.0.0:8650,    0.0.0.0,   8650, false",
    "[::1]:8650,      ::1,       8650, true",
  })
  void aPortOrAHostAndAPort(String text, String host, int port, boolean loopback)
      throws IOException {
    PageAddress address = PageAddress.parse(text);

    assertThat(address).isEqualTo(new PageAddress(host, port, false));
    assertThat(PageServer.isLoopback(address)).isEqualTo(loopback);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "no", "127.0.0.1", "0", "65536", "a:b:1", "-1", "http://a:1", "[::1]"})
  void anythingElseIsSaidToBeNone(String text) {
    assertThatThrownBy(() -> PageAddress.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("PORT, HOST:PORT or off");
  }

  @Test
  void whereThePortIsTakenTheStandardPageGoesElsewhereAndAnOrderedOneDoesNot() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
      int port = taken.getLocalPort();
      var standard = new PageAddress("127.0.0.1", port, true);
      try (var bench = new ServedBench(folder, standard, Optional.empty(), "sim:sound,seed=1")) {
        assertThat(bench.port()).isNotEqualTo(port);
        assertThat(Raw.get(bench.port(), "/")).startsWith("HTTP/1.1 200 ");
      }
      var ordered = new PageAddress("127.0.0.1", port, false);
      assertThatThrownBy(
              () ->
                  new ServedBench(
                      folder.resolve("b"), ordered, Optional.empty(), "sim:sound,seed=1"))
          .isInstanceOf(BindException.class);
    }
  }
}

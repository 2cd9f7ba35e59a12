package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.guided.Stations;
import org.thumbseal.link.HostClock;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.seal.AccessToken;
import org.thumbseal.visit.StartedBy;

/** Who gets in, with requests that no browser and no client library has made harmless. */
class DoorTest {
  private static final String PORT = "sim:sound,seed=1";
  private static final String START = "{\"port\":\"" + PORT + "\"}";

  @TempDir Path folder;
  private ServedBench bench;

  @BeforeEach
  void serve() throws Exception {
    bench = ServedBench.alone(folder, PORT);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private int port() {
    return bench.port();
  }

  /** A name turned to 127.0.0.1 by a foreign site: the browser says it in the Host header. */
  @ParameterizedTest
  @ValueSource(
      strings = {"evil.example:%d", "127.0.0.1", "127.0.0.1:1", "127.0.0.1.evil.example:%d", ""})
  void aWrongNameIsRefused(String host) throws IOException {
    String head = "GET / HTTP/1.1\nHost: " + host.replace("%d", "" + port());

    assertThat(Raw.ask(port(), head, "")).startsWith("HTTP/1.1 403 ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"127.0.0.1:%d", "localhost:%d", "LocalHost:%d", "[::1]:%d"})
  void ourOwnNamesAreTaken(String host) throws IOException {
    String head = "GET / HTTP/1.1\nHost: " + host.replace("%d", "" + port());

    assertThat(Raw.ask(port(), head, "")).startsWith("HTTP/1.1 200 ");
  }

  @Test
  void noNameAtAllAndTwoNamesAreRefused() throws IOException {
    String host = "\nHost: " + Raw.host(port());

    assertThat(Raw.ask(port(), "GET / HTTP/1.0", "")).startsWith("HTTP/1.1 403 ");
    assertThat(Raw.ask(port(), "GET / HTTP/1.1" + host + host, "")).startsWith("HTTP/1.1 400 ");
  }

  @Test
  void anotherPageCannotStart() throws IOException {
    String own = Raw.own(port());

    assertThat(Raw.post(port(), "/do/start", START)).startsWith("HTTP/1.1 403 ");
    for (String foreign :
        List.of("http://evil.example", "null", "https://" + Raw.host(port()), "http://127.0.0.1")) {
      assertThat(Raw.post(port(), "/do/start", START, "Origin: " + foreign))
          .as(foreign)
          .startsWith("HTTP/1.1 403 ");
    }
    assertThat(bench.desk(PORT).starts).isEmpty();
    assertThat(Raw.post(port(), "/do/start", START, own)).startsWith("HTTP/1.1 200 ");
    assertThat(bench.desk(PORT).starts).containsExactly(StartedBy.PAGE);
  }

  /** A search that somebody else begins takes the name off the tests that follow. */
  @Test
  void anotherPageCannotSearchForALeak() throws IOException {
    String begin = "{\"port\":\"" + PORT + "\",\"what\":\"begin\",\"asset\":\"SP-014\"}";

    assertThat(Raw.post(port(), "/do/search", begin)).startsWith("HTTP/1.1 403 ");
    for (String foreign : List.of("http://evil.example", "null", "https://" + Raw.host(port()))) {
      assertThat(Raw.post(port(), "/do/search", begin, "Origin: " + foreign))
          .as(foreign)
          .startsWith("HTTP/1.1 403 ");
    }
    String head = "POST /do/search HTTP/1.1\nHost: evil.example:" + port() + "\nContent-Length: 0";
    assertThat(Raw.ask(port(), head, "")).startsWith("HTTP/1.1 403 ");
    assertThat(Raw.get(port(), "/do/search")).startsWith("HTTP/1.1 405 ");
    assertThat(bench.desk(PORT).sought).isEmpty();
    assertThat(Raw.post(port(), "/do/search", begin, Raw.own(port()))).startsWith("HTTP/1.1 200 ");
    assertThat(bench.desk(PORT).sought).contains("SP-014");
  }

  @Test
  void anotherPageCannotLookOn() throws IOException {
    assertThat(Raw.get(port(), "/events", "Origin: http://evil.example"))
        .startsWith("HTTP/1.1 403 ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../etc/passwd",
        "/..%2f..%2fetc/passwd",
        "/words/../index.html",
        "/words/..%2fpage.js",
        "/words/xx.json",
        "/index.html/",
        "//",
        "/page.js%00",
        "/files.txt",
        "/words.properties",
        "http://127.0.0.1/../x"
      })
  void noPathLeadsAnywhereElse(String path) throws IOException {
    assertThat(Raw.get(port(), path)).matches("(?s)HTTP/1\\.1 40[04] .*").doesNotContain("root:");
  }

  @ParameterizedTest
  @ValueSource(strings = {"PUT", "DELETE", "OPTIONS", "HEAD", "TRACE"})
  void otherMethodsAreNot(String method) throws IOException {
    String head = method + " / HTTP/1.1\nHost: " + Raw.host(port());

    assertThat(Raw.ask(port(), head, "")).startsWith("HTTP/1.1 405 ");
  }

  /** Of the Fetch and CSP standards; on refusals as well. */
  @Test
  void everyAnswerHasTheHeadersThatProtectIt() throws IOException {
    for (String path : List.of("/", "/page.js", "/nothing", "/words/fr.json")) {
      assertThat(Raw.get(port(), path).toLowerCase(java.util.Locale.ROOT))
          .contains("content-security-policy: default-src 'none'; script-src 'self';")
          .contains("frame-ancestors 'none'")
          .contains("x-content-type-options: nosniff")
          .contains("referrer-policy: no-referrer")
          .contains("cache-control: no-store");
    }
  }

  @Test
  void tenMegabytesAreRefusedBeforeTheyCome() throws IOException {
    try (Socket socket = Raw.socket(port())) {
      String head =
          "POST /do/start HTTP/1.1\r\nHost: %s\r\n%s\r\nContent-Type: application/json\r\n"
              .formatted(Raw.host(port()), Raw.own(port()));
      String length = "Content-Length: " + (10 << 20) + "\r\n\r\n{";
      socket.getOutputStream().write((head + length).getBytes(StandardCharsets.UTF_8));

      assertThat(Raw.firstLine(socket)).startsWith("HTTP/1.1 413 ");
    }
  }

  @Test
  void aBodyOfUnsaidLengthIsReadToTheLimitOnly() throws IOException {
    try (Socket socket = Raw.socket(port())) {
      String head =
          "POST /do/start HTTP/1.1\r\nHost: %s\r\n%s\r\nContent-Type: application/json\r\n"
              .formatted(Raw.host(port()), Raw.own(port()));
      String chunk = "\r\n4100\r\n" + " ".repeat(0x4100) + "\r\n";
      String text = head + "Transfer-Encoding: chunked\r\n" + chunk;
      socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));

      assertThat(Raw.firstLine(socket)).startsWith("HTTP/1.1 413 ");
    }
  }

  @Test
  void othersNeedTheToken() throws Exception {
    AccessToken token = AccessToken.create(folder.resolve("key/page-token"));
    Path second = folder.resolve("second");
    try (ServedBench open =
        new ServedBench(second, ServedBench.free("0.0.0.0"), Optional.of(token), PORT)) {
      int at = open.port();
      String cookie = "Cookie: a=b; thumbseal=" + token.text();

      for (String path : List.of("/", "/page.js", "/events", "/languages.json")) {
        assertThat(Raw.get(at, path)).as(path).startsWith("HTTP/1.1 403 ");
      }
      assertThat(Raw.get(at, "/", "Cookie: thumbseal=wrong")).startsWith("HTTP/1.1 403 ");
      assertThat(Raw.get(at, "/?token=wrong")).startsWith("HTTP/1.1 403 ");
      assertThat(Raw.post(at, "/do/start", START, Raw.own(at))).startsWith("HTTP/1.1 403 ");
      assertThat(Raw.post(at, "/do/search", START, Raw.own(at))).startsWith("HTTP/1.1 403 ");
      assertThat(open.desk(PORT).starts).isEmpty();

      assertThat(Raw.get(at, "/?token=" + token.text()))
          .startsWith("HTTP/1.1 303 ")
          .contains("thumbseal=" + token.text())
          .contains("HttpOnly")
          .contains("SameSite=Strict")
          .containsPattern("(?i)location: /\r\n");
      assertThat(Raw.get(at, "/", cookie)).startsWith("HTTP/1.1 200 ");
      assertThat(Raw.post(at, "/do/start", START, Raw.own(at), cookie)).startsWith("HTTP/1.1 200 ");
    }
  }

  /** A strict cookie does not go with the first request out of a message: once more, then. */
  @Test
  void aVisitorFromALinkIsLedToThePageOnce() throws Exception {
    AccessToken token = AccessToken.create(folder.resolve("key/page-token"));
    Path second = folder.resolve("second");
    try (ServedBench open =
        new ServedBench(second, ServedBench.free("0.0.0.0"), Optional.of(token), PORT)) {
      assertThat(Raw.get(open.port(), "/", "Sec-Fetch-Site: cross-site"))
          .startsWith("HTTP/1.1 200 ")
          .contains("http-equiv=\"refresh\"")
          .doesNotContain("page.js");
      assertThat(Raw.get(open.port(), "/", "Sec-Fetch-Site: same-origin"))
          .startsWith("HTTP/1.1 403 ");
    }
  }

  @Test
  void aPageForOthersIsNotServedWithoutAToken() {
    var live = new LiveBench(List.of(PORT), GradingSettings.DEFAULT, HostClock.system());
    var setting =
        new PageServer.Setting("results", document -> fail("nothing is sealed"), Stations.USUAL);
    var served = new PageServer.Served(live, Map.of(), HostClock.system(), setting);

    assertThatThrownBy(
            () -> PageServer.start(ServedBench.free("0.0.0.0"), served, Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

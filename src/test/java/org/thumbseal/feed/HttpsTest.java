package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.ToIntFunction;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.archive.LedgerReader;
import org.thumbseal.link.HostClock;
import org.thumbseal.seal.Login;
import org.thumbseal.seal.TlsTrust;

/** With the JDK's own HTTPS server, under a certificate that openssl has made. */
@Timeout(120)
class HttpsTest {
  @TempDir private Path folder;
  private final List<String> told = new ArrayList<>();
  private final List<String> arrivals = new ArrayList<>();
  private final List<String> seen = new ArrayList<>();
  private final CountDownLatch end = new CountDownLatch(1);
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private ToIntFunction<String> answers = id -> 204;
  private HttpsServer server;
  private Certificates certificates;

  @BeforeEach
  void serve() throws Exception {
    certificates = Certificates.make(folder.resolve("tls"), "127.0.0.1");
    server = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setHttpsConfigurator(new HttpsConfigurator(own()));
    server.setExecutor(threads);
    server.createContext("/logbook/in/", this::take);
    server.start();
  }

  @AfterEach
  void stop() {
    end.countDown();
    server.stop(0);
    threads.shutdownNow();
  }

  private SSLContext own() throws Exception {
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(certificates.folder().resolve("host.p12"))) {
      store.load(in, Certificates.PASSWORD.toCharArray());
    }
    KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
    keys.init(store, Certificates.PASSWORD.toCharArray());
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(keys.getKeyManagers(), null, null);
    return context;
  }

  private void take(HttpExchange exchange) throws IOException {
    String id = exchange.getRequestURI().getPath().replaceFirst(".*/", "");
    byte[] body = exchange.getRequestBody().readAllBytes();
    seen.add(
        exchange.getRequestMethod()
            + " "
            + exchange.getRequestURI()
            + " "
            + exchange.getRequestHeaders().getFirst("Content-Type")
            + " "
            + exchange.getRequestHeaders().getFirst("Authorization"));
    int status = answers.applyAsInt(id);
    if (status / 100 == 2) {
      arrivals.add(id);
      assertThat(new String(body, StandardCharsets.UTF_8)).contains("\"id\":\"" + id + "\"");
    }
    exchange.getResponseHeaders().set("Location", "https://elsewhere.example/");
    exchange.sendResponseHeaders(status, -1);
    exchange.close();
  }

  private FeedTarget target(Optional<Login> login, Optional<Path> ca) throws Exception {
    FeedAddress address =
        FeedAddress.parse("https://127.0.0.1:" + server.getAddress().getPort() + "/logbook/in/");
    return new FeedTarget(address, "thumbseal", login, TlsTrust.of(ca), true);
  }

  private FeedTarget target() throws Exception {
    return target(Optional.empty(), Optional.of(certificates.authority()));
  }

  private Feeder.Round round(SentDocuments from, FeedTarget to) throws Exception {
    Feeder feeder = open(from, to);
    try {
      return feeder.round();
    } finally {
      feeder.close();
    }
  }

  private Feeder open(SentDocuments from, FeedTarget to) throws FeedException {
    var around = new FeedSurroundings(HostClock.system(), told::add, Duration.ZERO);
    return Feeder.open(from.place(), to, FeedBegin.GO_ON, around);
  }

  @Test
  void eachIsPutUnderItsId() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 3);
    assertThat(round(from, target())).isEqualTo(new Feeder.Round(3, ""));
    assertThat(arrivals).isEqualTo(SentDocuments.ids(3));
    assertThat(seen.get(0))
        .isEqualTo("PUT /logbook/in/" + SentDocuments.id(1) + " application/json null");
  }

  @Test
  void aReceiverThatIsNotWellForATime() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 20);
    List<String> asked = new ArrayList<>();
    answers =
        id -> {
          asked.add(id);
          return asked.size() % 5 == 0 || (asked.size() > 30 && asked.size() < 40) ? 503 : 201;
        };
    Feeder feeder = open(from, target());
    int rounds = 0;
    Feeder.Round last;
    do {
      last = feeder.round();
      assertThat(last.trouble()).isIn("", "the answer is HTTP 503");
      rounds++;
    } while (!last.trouble().isEmpty() && rounds < 100);
    feeder.close();
    assertThat(rounds).isGreaterThan(3);
    assertThat(List.copyOf(new LinkedHashSet<>(arrivals))).isEqualTo(SentDocuments.ids(20));
    assertThat(arrivals).hasSize(20);
  }

  @ParameterizedTest
  @ValueSource(ints = {400, 409, 413, 422})
  void oneThatIsNotTakenIsPutAside(int status) throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 3);
    answers = id -> id.equals(SentDocuments.id(2)) ? status : 200;
    assertThat(round(from, target())).isEqualTo(new Feeder.Round(2, ""));
    assertThat(arrivals).containsExactly(SentDocuments.id(1), SentDocuments.id(3));
    assertThat(told).hasSize(1);
    assertThat(told.get(0)).contains("is not taken: the answer is HTTP " + status);
  }

  /** What is wrong with the address or the login, or will pass, is no fault of a document. */
  @ParameterizedTest
  @ValueSource(ints = {302, 308, 401, 403, 404, 405, 408, 425, 429, 500, 502, 503, 504})
  void othersWait(int status) throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 2);
    answers = id -> status;
    Feeder.Round round = round(from, target());
    assertThat(round.sent()).isZero();
    assertThat(round.trouble()).startsWith("the answer is HTTP " + status);
    assertThat(seen).as("not followed, not tried further").hasSize(1);
    assertThat(Feeder.state(from.place(), target()).waiting()).isEqualTo(2);
    assertThat(told).isEmpty();
  }

  @Test
  void anAnswerThatDoesNotComeInTimeIsNotWaitedFor() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    answers =
        id -> {
          try {
            end.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
          return 200;
        };
    Parcel parcel =
        Parcel.read(new LedgerReader(from.path()).find((kid, n) -> true, 1, () -> {}).get(0))
            .orElseThrow();
    try (HttpsCourier courier = new HttpsCourier(target(), Duration.ofMillis(300))) {
      assertThat(courier.deliver(parcel))
          .isEqualTo(new Answer.Trouble("there was no answer in time"));
    }
  }

  @Test
  void onlyTheRightCertificateIsAccepted() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    Certificates others = Certificates.make(folder.resolve("others"), "127.0.0.1");
    assertThat(round(from, target(Optional.empty(), Optional.empty())).trouble())
        .contains("by no authority that is known here; name that one with --ca");
    assertThat(round(from, target(Optional.empty(), Optional.of(others.authority()))).trouble())
        .contains("by no authority that is known here");
    assertThat(seen).isEmpty();
  }

  @Test
  void theLoginGoesAlong() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    Path ca = certificates.authority();
    round(from, target(Optional.of(login("user=bench\npassword=ü:x\n")), Optional.of(ca)));
    from.add(2);
    round(from, target(Optional.of(login("token=abc.def")), Optional.of(ca)));
    String pair = Base64.getEncoder().encodeToString("bench:ü:x".getBytes(StandardCharsets.UTF_8));
    assertThat(seen.get(0)).endsWith(" Basic " + pair);
    assertThat(seen.get(1)).endsWith(" Bearer abc.def");
  }

  private Login login(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("login"), text);
    file.toFile().setReadable(false, false);
    file.toFile().setReadable(true, true);
    return Login.read(file);
  }

  @Test
  void nobodyThere() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    FeedTarget to = target();
    server.stop(0);
    assertThat(round(from, to).trouble()).contains("cannot be reached");
  }
}

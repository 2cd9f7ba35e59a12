package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.link.HostClock;
import org.thumbseal.seal.Login;
import org.thumbseal.seal.TlsTrust;

/** With a real broker, and a subscriber by other hands. */
@Timeout(120)
class MosquittoTest {
  private static final String OPEN = "allow_anonymous true";
  @TempDir private Path folder;
  private final List<String> told = new ArrayList<>();

  private FeedTarget target(Broker broker) throws Exception {
    return target("mqtt://127.0.0.1:" + broker.port(), Optional.empty(), Optional.empty());
  }

  private static FeedTarget target(String address, Optional<Login> login, Optional<Path> ca)
      throws Exception {
    return new FeedTarget(FeedAddress.parse(address), "thumbseal", login, TlsTrust.of(ca), true);
  }

  private Feeder open(SentDocuments from, FeedTarget to) throws FeedException {
    return Feeder.open(from.place(), to, FeedBegin.GO_ON, around());
  }

  private FeedSurroundings around() {
    return new FeedSurroundings(HostClock.system(), told::add, Duration.ZERO);
  }

  private Feeder.Round round(SentDocuments from, FeedTarget to) throws Exception {
    Feeder feeder = open(from, to);
    try {
      return feeder.round();
    } finally {
      feeder.close();
    }
  }

  /** The subscriber reads the packets as the standard has them. */
  @Test
  void whatArrivesIsWhatIsStored() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 0);
    var document = ExampleDocument.unsealed(1);
    document.putObject("asset").put("id", "Ward 3/#+ Ü");
    Path file = from.add(document);
    try (Broker broker = Broker.in(folder.resolve("b"), OPEN);
        Collector collector = Collector.at(broker, folder.resolve("c"))) {
      assertThat(round(from, target(broker))).isEqualTo(new Feeder.Round(1, ""));
      collector.await(1);
      Collector.Message message = collector.messages().get(0);
      assertThat(message.topic()).isEqualTo("thumbseal/occlusion-test/Ward%203%2F%23%2B%20%C3%9C");
      assertThat(message.payload()).isEqualTo(Files.readString(file, StandardCharsets.UTF_8));
      assertThat(message.properties().path("content-type").asString())
          .isEqualTo("application/json");
      assertThat(message.properties().path("payload-format-indicator").asInt()).isEqualTo(1);
      var user = message.properties().path("user-properties");
      assertThat(user.path("id").asString()).isEqualTo(SentDocuments.id(1));
      assertThat(user.path("kind").asString()).isEqualTo("occlusion-test");
      assertThat(user.path("schema").asString()).isEqualTo(document.path("schema").asString());
    }
  }

  @Test
  void aBrokerThatIsAwayForATime() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 40);
    try (Broker broker = Broker.in(folder.resolve("b"), OPEN);
        Collector collector = Collector.at(broker, folder.resolve("c"))) {
      FeedTarget to = target(broker);
      RetryPlan quick = new RetryPlan(Duration.ofMillis(20), Duration.ofMillis(200));
      var rhythm = new FeedFollower.Rhythm(Duration.ofMillis(50), quick, () -> 0.5);
      FeedFollower follower = FeedFollower.start(() -> open(from, to), rhythm, around());
      collector.await(40);
      broker.stop();
      for (int number = 41; number <= 60; number++) {
        from.add(number);
        follower.stored();
      }
      Awaitility.await()
          .atMost(Duration.ofSeconds(30))
          .until(() -> follower.state().waiting() == 20 && follower.state().since().isPresent());
      assertThat(follower.state().trouble()).contains("cannot be reached: Connection refused");
      broker.start();
      collector.await(60);
      Awaitility.await().until(() -> follower.state().waiting() == 0);
      follower.close();
      assertThat(collector.firstIds()).isEqualTo(SentDocuments.ids(60));
    }
  }

  /** Connections that end after a few messages each, some with the answer on its way. */
  @Test
  void aConnectionThatIsCutAgainAndAgain() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 60);
    try (Broker broker = Broker.in(folder.resolve("b"), OPEN);
        Collector collector = Collector.at(broker, folder.resolve("c"));
        CuttingProxy proxy = CuttingProxy.to(broker.port(), 7)) {
      Feeder feeder =
          open(
              from, target("mqtt://127.0.0.1:" + proxy.port(), Optional.empty(), Optional.empty()));
      int rounds = 0;
      while (feeder.state().waiting() > 0 || rounds == 0) {
        feeder.round();
        rounds++;
        assertThat(rounds).isLessThan(200);
      }
      feeder.close();
      collector.await(60);
      assertThat(proxy.cuts()).isGreaterThan(5);
      assertThat(collector.firstIds()).isEqualTo(SentDocuments.ids(60));
    }
  }

  @Test
  void credentialsAreAskedForAndKept() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    Path passwords = folder.resolve("passwords");
    new ProcessBuilder("mosquitto_passwd", "-b", "-c", passwords.toString(), "bench", "s3cret=1")
        .start()
        .waitFor();
    try (Broker broker =
        Broker.in(folder.resolve("b"), "allow_anonymous false", "password_file " + passwords)) {
      String address = "mqtt://127.0.0.1:" + broker.port();
      assertThat(round(from, target(address, Optional.empty(), Optional.empty())).trouble())
          .contains("the broker does not allow this");
      assertThat(round(from, target(address, login("wrong"), Optional.empty())).trouble())
          .matches("the broker (refuses user name or password|does not allow this).*");
      try (Collector collector =
          Collector.at(broker, folder.resolve("c"), "-u", "bench", "-P", "s3cret=1")) {
        assertThat(round(from, target(address, login("s3cret=1"), Optional.empty())).sent())
            .isEqualTo(1);
        collector.await(1);
      }
    }
  }

  private Optional<Login> login(String password) throws Exception {
    Path file = Files.writeString(folder.resolve("login"), "user=bench\npassword=" + password);
    file.toFile().setReadable(false, false);
    file.toFile().setReadable(true, true);
    return Optional.of(Login.read(file));
  }

  @Test
  void onlyTheRightCertificateIsAccepted() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 3);
    Certificates mine = Certificates.make(folder.resolve("mine"), "127.0.0.1");
    Certificates others = Certificates.make(folder.resolve("others"), "127.0.0.1");
    Certificates elsewhere = Certificates.make(folder.resolve("elsewhere"), "broker.example");
    try (Broker broker = Broker.in(folder.resolve("b"), mine.broker());
        Collector collector =
            Collector.at(broker, folder.resolve("c"), "--cafile", mine.authority().toString())) {
      String address = "mqtts://127.0.0.1:" + broker.port();
      Optional<Login> none = Optional.empty();
      assertThat(round(from, target(address, none, Optional.empty())).trouble())
          .contains("by no authority that is known here; name that one with --ca");
      assertThat(round(from, target(address, none, Optional.of(others.authority()))).trouble())
          .contains("by no authority that is known here");
      assertThat(round(from, target(address, none, Optional.of(mine.authority()))).sent())
          .isEqualTo(3);
      collector.await(3);
      assertThat(collector.ids()).isEqualTo(SentDocuments.ids(3));
    }
    try (Broker broker = Broker.in(folder.resolve("b2"), elsewhere.broker())) {
      String address = "mqtts://127.0.0.1:" + broker.port();
      Optional<Path> ca = Optional.of(elsewhere.authority());
      assertThat(round(from, target(address, Optional.empty(), ca)).trouble())
          .contains("its certificate is for another name");
    }
  }

  @Test
  void whereNobodyHasSubscribedItWaits() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 2);
    try (Broker broker = Broker.in(folder.resolve("b"), OPEN)) {
      FeedTarget to = target(broker);
      assertThat(round(from, to).trouble())
          .isEqualTo(
              "nobody has subscribed, and the broker would drop it; subscribe to thumbseal/#");
      try (Collector collector = Collector.at(broker, folder.resolve("c"))) {
        assertThat(round(from, to)).isEqualTo(new Feeder.Round(2, ""));
        collector.await(2);
        assertThat(collector.ids()).isEqualTo(SentDocuments.ids(2));
      }
    }
    try (Broker broker = Broker.in(folder.resolve("b2"), OPEN)) {
      FeedTarget to = target(broker);
      var anyway = new FeedTarget(to.address(), "thumbseal", to.login(), to.tls(), false);
      assertThat(round(from, anyway).sent()).isEqualTo(2);
    }
  }

  /** With an answer, and by a connection that is cut. */
  @Test
  void oneThatIsTooLargeIsPutAside() throws Exception {
    for (String limit : List.of("max_packet_size 12000", "message_size_limit 12000")) {
      SentDocuments from = SentDocuments.in(folder.resolve("r" + limit.length()), 1);
      var large = ExampleDocument.unsealed(2);
      large.put("note", "x".repeat(20_000));
      from.add(large);
      from.add(3);
      try (Broker broker = Broker.in(folder.resolve("b" + limit.length()), OPEN, limit);
          Collector collector = Collector.at(broker, folder.resolve("c" + limit.length()))) {
        Feeder feeder = open(from, target(broker));
        // Where the broker cuts the connection without a word, some times until it is clear.
        for (int i = 0; i < Feeder.SUSPICIOUS; i++) {
          feeder.round();
        }
        feeder.close();
        collector.await(2);
        assertThat(collector.ids()).containsExactly(SentDocuments.id(1), SentDocuments.id(3));
        assertThat(Feeder.state(from.place(), target(broker)).refused()).isEqualTo(1);
      }
    }
    assertThat(told).hasSize(2).allMatch(t -> t.contains(": is not taken: "));
  }

  @Test
  void aTopicThatIsNotAllowedWaits() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    Path acl = Files.writeString(folder.resolve("acl"), "topic read thumbseal/#\n");
    acl.toFile().setReadable(true);
    try (Broker broker = Broker.in(folder.resolve("b"), OPEN, "acl_file " + acl)) {
      assertThat(round(from, target(broker)).trouble())
          .contains("does not allow this; let this user publish on the topic");
    }
  }
}

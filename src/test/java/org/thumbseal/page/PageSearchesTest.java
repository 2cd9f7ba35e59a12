package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.daemon.StartRefusal;
import org.thumbseal.guided.Stations;
import org.thumbseal.json.Json;
import org.thumbseal.link.HostClock;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seek.Section;
import org.thumbseal.seek.Station;
import org.thumbseal.seek.SuctionPath;
import org.thumbseal.visit.Visit;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The search for a leak as windows ask for it and tests come in. */
class PageSearchesTest {
  private static final String PORT = "sim:sound,seed=1";

  @TempDir Path folder;
  private final List<ObjectNode> sealed = new ArrayList<>();
  private boolean full;
  private boolean late;
  private double held = 4;
  private LiveBench bench;
  private SpokenDesk desk;
  private Deeds deeds;
  private PageSearches searches;

  @BeforeEach
  void open() {
    open(Stations.USUAL);
  }

  private void open(Stations stations) {
    bench = new LiveBench(List.of(PORT), GradingSettings.DEFAULT, HostClock.system());
    desk = new SpokenDesk(PORT, bench);
    var setting = new PageServer.Setting("results", this::seal, stations);
    searches =
        new PageSearches(
            new PageServer.Served(bench, Map.of(PORT, desk), HostClock.system(), setting));
    deeds = new Deeds(Map.of(PORT, desk), searches);
  }

  private StoredResult seal(ObjectNode document) throws ArchiveException {
    if (full) {
      throw new ArchiveException("no space left");
    }
    sealed.add(document);
    return new StoredResult(folder.resolve("search.json"), document, true);
  }

  private void ask(String what, long step) throws Refusal {
    deeds.take(
        "/do/search",
        Json.object().put("port", PORT).put("what", what).put("step", step).put("asset", "SP-014"));
  }

  private JsonNode shown() {
    return bench.ports().iterator().next().tree().path("search");
  }

  private long step() {
    return shown().path("step").asLong();
  }

  private static void assertRefused(String code, ThrowingCallable asked) {
    assertThatThrownBy(asked)
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.tree().path("code").asString()).isEqualTo(code));
  }

  /** Of a sealed result what a search reads. */
  private void tested(String id, double kilopascals) throws IOException {
    tested(id, kilopascals, "pass");
  }

  private void tested(String id, double kilopascals, String verdict) throws IOException {
    ObjectNode result = Json.object().put("kind", ResultDocument.KIND).put("id", id);
    result.put("verdict", verdict).putObject("test").putObject("sensor").put("id", "tp-1");
    result
        .withObject("/test")
        .putArray("phases")
        .addObject()
        .put("phase", "hold")
        .put("start", 14)
        .put("end", 14 + held);
    result
        .putObject("measurements")
        .putObject("maximumVacuum")
        .put("value", kilopascals)
        .put("unit", "kPa")
        .put("coverageFactor", 2)
        .put("expandedUncertainty", 0.2);
    result
        .putObject("criteria")
        .putObject("maximumVacuumLimit")
        .put("value", 80)
        .put("unit", "kPa");
    Path file = Files.writeString(folder.resolve(id + ".json"), result.toString());
    if (!late) {
      searches.graded(PORT, id);
    }
    searches.stored(PORT, id, file);
  }

  @Test
  void aSearchTakesTheNameOffTheTestsAndGoesToItsSealedEnd() throws Exception {
    ask("begin", 0);
    assertThat(desk.sought).contains("SP-014");
    assertThat(shown().path("station").asInt()).isEqualTo(1);
    tested("a", 70);
    assertThat(shown().path("station").asInt()).isEqualTo(2);
    tested("b", 88);
    assertThat(shown().path("standing").asString()).isEqualTo("over");
    assertThat(shown().at("/answer/code").asString()).isEqualTo("section-leaks");
    assertThat(shown().at("/answer/section").asInt()).isEqualTo(1);
    assertThat(shown().at("/answer/file").asString()).isEqualTo("search.json");
    assertThat(sealed).hasSize(1);
    assertThat(sealed.get(0).at("/asset/id").asString()).isEqualTo("SP-014");
    assertThat(sealed.get(0).at("/tests")).hasSize(2);
  }

  @Test
  void placesThatHaveNamesHereAreCalledByThem() throws Exception {
    Path file = folder.resolve("our stations.txt");
    SuctionPath two =
        new SuctionPath(
            List.of(
                new Station("blue clamp", new Section("the tall jar", 50)),
                new Station("wall nipple", new Section("the wall line", 50))),
            0);
    open(new Stations(two, Optional.of(file)));
    ask("begin", 0);
    assertThat(shown().path("stationName").asString()).isEqualTo("blue clamp");
    tested("a", 70);
    assertThat(shown().path("stationName").asString()).isEqualTo("wall nipple");
    assertThat(shown().path("resumed").asString())
        .endsWith("a.json --stations '" + file + "' --port P");
    tested("b", 88);
    assertThat(shown().at("/answer/sectionName").asString()).isEqualTo("the tall jar");
  }

  @Test
  void aFullDiskLosesNoAnswer() throws Exception {
    ask("begin", 0);
    tested("a", 70);
    full = true;
    tested("b", 88);
    assertThat(shown().path("standing").asString()).isEqualTo("unsealed");
    assertThat(shown().path("trouble").asString()).isEqualTo("no space left");
    ask("seal", step());
    assertThat(shown().path("standing").asString()).isEqualTo("unsealed");
    full = false;
    ask("seal", step());
    assertThat(shown().path("standing").asString()).isEqualTo("over");
    assertThat(sealed).hasSize(1);
  }

  @Test
  void whatAnotherWindowDidMeanwhileIsNotDoneTwice() throws Exception {
    ask("begin", 0);
    assertRefused("search-moved", () -> ask("begin", 0));
    tested("a", 70);
    long seen = step();
    ask("back", seen);
    assertThat(shown().path("station").asInt()).isEqualTo(1);
    assertRefused("search-moved", () -> ask("back", seen));
    assertRefused("search-moved", () -> ask("end", seen));
    assertRefused("no-further-back", () -> ask("back", step()));
    ask("forward", step());
    assertThat(shown().path("station").asInt()).isEqualTo(2);
  }

  /** Of two at one station the later counts, and a third would be one look too many. */
  @Test
  void aStationIsTestedTwiceAtMost() throws Exception {
    ask("begin", 0);
    tested("a", 70);
    ask("back", step());
    tested("b", 71);
    assertThat(shown().path("again").asBoolean()).isFalse();
    assertThat(shown().path("tests").asInt()).isEqualTo(2);
    assertThat(shown().path("canGoBack").asBoolean()).isFalse();
    assertRefused("no-further-back", () -> ask("back", step()));
  }

  /** What was under way at one station counts for it, however late it is stored. */
  @Test
  void aLateResultCountsForTheStationItWasMadeAt() throws Exception {
    ask("begin", 0);
    searches.graded(PORT, "late");
    tested("a", 70);
    late = true;
    tested("late", 71);
    assertThat(shown().path("tests").asInt()).isEqualTo(2);
    assertThat(shown().path("lines").get(1).asString()).startsWith("jar inlet: ");
  }

  @Test
  void anInvalidTestIsMadeAgain() throws Exception {
    ask("begin", 0);
    tested("a", 70, "invalid");
    assertThat(shown().path("tests").asInt()).isZero();
    assertThat(shown().path("station").asInt()).isEqualTo(1);
    assertThat(shown().path("lines").get(0).asString())
        .isEqualTo("this test does not count: it is invalid; test again at jar inlet");
  }

  /** A sensor that is pulled leaves a highest vacuum, and that is no maximum. */
  @Test
  void aTestThatBrokeOffInTheClimbIsMadeAgain() throws Exception {
    ask("begin", 0);
    held = 0.3;
    tested("a", 70, "inconclusive");
    assertThat(shown().path("tests").asInt()).isZero();
    assertThat(shown().path("lines").get(0).asString()).contains("still climbing");
  }

  @Test
  void anotherPumpLetsItRestAndNothingIsLost() throws Exception {
    ask("begin", 0);
    tested("a", 70);
    deeds.take("/do/visit", Json.object().put("port", PORT).put("asset", "SP-099"));
    assertThat(desk.sought).isEmpty();
    assertThat(desk.visit.asset()).contains("SP-099");
    assertThat(shown().path("standing").asString()).isEqualTo("resting");
    tested("of-another", 88);
    assertThat(shown().path("tests").asInt()).isEqualTo(1);
    ask("go-on", step());
    assertThat(desk.sought).contains("SP-014");
    assertThat(desk.visit).isEqualTo(Visit.NONE);
    assertThat(shown().path("station").asInt()).isEqualTo(2);
    ask("end", step());
    assertThat(shown().isMissingNode()).isTrue();
    assertThat(desk.sought).isEmpty();
    assertThat(sealed).isEmpty();
  }

  @Test
  void aDamagedCordOrATestUnderWayKeepsItFromBeginning() {
    desk.refusal = Optional.of(StartRefusal.MAINS_FORBIDDEN);
    assertRefused("mains-forbidden", () -> ask("begin", 0));
    assertThat(shown().isMissingNode()).isTrue();
    desk.refusal = Optional.empty();
    assertThatCode(() -> ask("begin", 0)).doesNotThrowAnyException();
    desk.refusal = Optional.of(StartRefusal.TEST_RUNNING);
    assertRefused("test-running", () -> ask("rest", step()));
    assertThat(shown().path("standing").asString()).isEqualTo("seeking");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{'port':'PORT'}",
        "{'port':'PORT','what':'begin'}",
        "{'port':'PORT','what':'begin','asset':7}",
        "{'port':'PORT','what':'dance','asset':'x'}",
        "{'port':'PORT','what':'back'}",
        "{'port':'PORT','what':'back','step':'1'}",
        "{'port':'PORT','what':'back','step':1.5}",
        "{'port':'PORT','what':'back','step':99999999999999999999}"
      })
  void whatIsNoRequestIsRefused(String text) {
    ObjectNode body =
        (ObjectNode) Json.mapper().readTree(text.replace('\'', '"').replace("PORT", PORT));
    assertRefused("bad-request", () -> deeds.take("/do/search", body));
    assertThat(desk.sought).isEmpty();
  }
}

package org.thumbseal.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.finding.FindingCode;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Criteria.Equipment;
import org.thumbseal.grade.ReasonCode;
import org.thumbseal.grade.Verdict;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.phase.Phase;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.visit.CheckItem;
import org.thumbseal.visit.CheckState;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.wire.RejectCause;
import tools.jackson.databind.JsonNode;

/** Holds the page about the result document to the documents that the program makes. */
class ResultFormatTest {
  private static final Path PAGE = Path.of("src/docs/result-format.md");
  private static final Pattern NAME = Pattern.compile("`([A-Za-z0-9.]+)`");

  /**
   * Members that {@code replay --json} does not have; the tests of seal and archive see to them.
   */
  private static final Set<String> ELSEWHERE = Set.of("ledger", "signature", "comparedWith");

  @Test
  void everyMemberOfADocumentIsOnThePage() throws Exception {
    String page = Files.readString(PAGE, UTF_8);
    Set<String> names = new TreeSet<>();
    members().forEach(path -> names.add(path.substring(path.lastIndexOf('.') + 1)));
    Arrays.stream(RejectCause.values()).forEach(cause -> names.remove(cause.code()));

    assertThat(names)
        .contains("occludedAt", "altitudeFactor", "columns", "drift", "jar", "why", "heldAt");
    assertThat(names)
        .allSatisfy(name -> assertThat(page).containsPattern("[`.\"]" + name + "[`.\"]"));
  }

  @Test
  void everyMemberOfThePageIsInADocument() throws Exception {
    Set<String> members = members();
    assertThat(promised()).hasSizeGreaterThan(40);
    assertThat(promised()).filteredOn(path -> !ELSEWHERE.contains(path)).isSubsetOf(members);
    assertThat(members).doesNotContainAnyElementsOf(ELSEWHERE);
  }

  @Test
  void everyCodeIsOnThePage() throws Exception {
    String page = Files.readString(PAGE, UTF_8);
    Stream.of(
            Arrays.stream(ReasonCode.values()).map(ReasonCode::code),
            Arrays.stream(Verdict.values()).map(Verdict::code),
            Arrays.stream(Phase.values()).map(Phase::code),
            Arrays.stream(FindingCode.values()).map(FindingCode::code),
            Arrays.stream(Origin.values()).map(Origin::code),
            Arrays.stream(RejectCause.values()).map(RejectCause::code),
            Arrays.stream(CheckItem.values()).map(CheckItem::code),
            Arrays.stream(CheckState.values()).map(CheckState::code),
            Arrays.stream(StartedBy.values()).map(StartedBy::code))
        .flatMap(codes -> codes)
        .forEach(code -> assertThat(page).contains('`' + code + '`'));
  }

  /** The first columns of the tables: a name with a full stop before it stands beside the last. */
  private static Set<String> promised() throws IOException {
    Set<String> paths = new TreeSet<>();
    String parent = "";
    for (String line : Files.readString(PAGE, UTF_8).lines().toList()) {
      parent = line.startsWith("### Diagnostics") ? "diagnostics." : parent;
      parent = line.startsWith("### Reasons") || line.startsWith("## The d") ? "skip" : parent;
      if (line.startsWith("| `") && !parent.equals("skip")) {
        add(paths, parent, line.substring(0, line.indexOf('|', 1)));
      }
    }
    return paths;
  }

  private static void add(Set<String> paths, String parent, String cell) {
    String beside = "";
    for (Matcher name = NAME.matcher(cell.replaceAll("\\([^)]*\\)", "")); name.find(); ) {
      String written = name.group(1);
      String path = written.startsWith(".") ? beside + written : parent + written;
      beside = path.contains(".") ? path.substring(0, path.lastIndexOf('.')) : "";
      paths.add(path);
    }
  }

  /** The path of every member of documents that have between them all there can be. */
  private static Set<String> members() {
    Set<String> paths = new TreeSet<>();
    for (SimulationKind kind :
        List.of(
            SimulationKind.SOUND,
            SimulationKind.ALTITUDE,
            SimulationKind.NOISY_LINE,
            SimulationKind.LEAK,
            SimulationKind.RESTRICTION,
            SimulationKind.CONTROL_NOT_AT_MAXIMUM)) {
      results(kind).forEach(document -> collect(paths, "", document));
    }
    return paths;
  }

  private static List<JsonNode> results(SimulationKind kind) {
    List<CaptureLine> lines = new ArrayList<>();
    Simulation.of(kind, 1)
        .lines()
        .forEachRemaining(line -> lines.add(new CaptureLine(line.hostMicros(), line.line())));
    Instant started = Instant.parse("2026-03-02T07:15:00Z");
    Capture capture =
        new Capture(
            new CaptureHeader(
                started,
                Map.of(
                    "jar-l", "2",
                    "leak-search", "SP-014",
                    "check-jar", "replaced; part: jar; reason: cracked")),
            lines,
            0);
    Grader.Source source = new Grader.Source("x.log", "0".repeat(64), Optional.of("time=1"));
    GradingSettings settings = settings();
    return Grader.grade(capture, source, settings).stream()
        .map(result -> (JsonNode) ResultTree.of(result))
        .toList();
  }

  private static GradingSettings settings() {
    Criteria usual = Criteria.DEFAULT;
    Criteria criteria =
        new Criteria(
            usual.name(),
            usual.riseKilopascals(),
            usual.riseSeconds(),
            usual.usualRiseFrom(),
            usual.maximumKilopascals(),
            usual.openKilopascals(),
            usual.altitudeRule(),
            usual.decisionRule(),
            new Equipment(Optional.of(2.0), Optional.of(30.0)));
    return GradingSettings.DEFAULT.withCriteria(criteria).withPump(p -> p.withAsset("SP-014"));
  }

  private static void collect(Set<String> paths, String parent, JsonNode node) {
    node.propertyStream()
        .forEach(
            member -> {
              String path = parent + member.getKey();
              paths.add(path);
              collect(paths, path + ".", member.getValue());
            });
    node.valueStream()
        .filter(child -> node.isArray())
        .forEach(child -> collect(paths, parent, child));
  }
}

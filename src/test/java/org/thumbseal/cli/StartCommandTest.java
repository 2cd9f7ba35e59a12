package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.StartRefusal;
import org.thumbseal.guided.Stations;
import org.thumbseal.link.HostClock;
import org.thumbseal.page.LiveBench;
import org.thumbseal.page.PageAddress;
import org.thumbseal.page.PageNote;
import org.thumbseal.page.PageServer;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.seal.AccessToken;
import org.thumbseal.visit.Check;
import org.thumbseal.visit.CheckItem;
import org.thumbseal.visit.CheckState;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;

/** The command against a page that is really served, with a token. */
class StartCommandTest {
  private static final String PORT = "sim:sound";

  @TempDir Path folder;
  private final Map<String, PortDesk> desks = new LinkedHashMap<>();
  private final LiveBench live =
      new LiveBench(List.of(PORT, "sim:leak"), GradingSettings.DEFAULT, HostClock.system());
  private PageServer page;
  private PageNote note;

  /** Takes what is said. */
  private final class Desk implements PortDesk {
    private Optional<StartRefusal> refusal = Optional.empty();
    private Optional<StartedBy> by = Optional.empty();
    private Visit visit = Visit.NONE;

    @Override
    public String port() {
      return PORT;
    }

    @Override
    public void visit(Visit said) {
      visit = said;
      live.visit(PORT, said, Optional.empty());
    }

    @Override
    public Optional<StartRefusal> start(StartedBy who, Optional<String> asset) {
      by = Optional.of(who);
      return refusal;
    }

    @Override
    public Optional<StartRefusal> seek(Optional<String> asset) {
      return refusal;
    }
  }

  private final Desk desk = new Desk();

  @BeforeEach
  void serve() throws Exception {
    desks.put(PORT, desk);
    AccessToken token = AccessToken.create(folder.resolve("key/page-token"));
    var kept =
        new PageServer.Setting("results", document -> fail("nothing is sealed"), Stations.USUAL);
    var served = new PageServer.Served(live, desks, HostClock.system(), kept);
    page = PageServer.start(new PageAddress("0.0.0.0", 0, true), served, Optional.of(token));
    String url = "http://127.0.0.1:" + page.port() + "/";
    note = new PageNote(url, Optional.of(token.text()));
    note.write(Files.createDirectories(folder.resolve("results")));
  }

  @AfterEach
  void close() {
    page.close();
  }

  private CommandRun start(Object... more) {
    List<Object> arguments = new java.util.ArrayList<>(List.of("start"));
    arguments.addAll(List.of("--results", folder.resolve("results")));
    arguments.addAll(List.of(more));
    return CommandRun.of(arguments.toArray());
  }

  @Test
  void startsWithWhatIsSaidAndLeavesTheRestStanding() {
    desk.visit(
        new Visit(
            Optional.of("P-1"),
            List.of(
                Check.of(CheckItem.JAR, CheckState.OK),
                Check.of(CheckItem.GASKET, CheckState.NOT_CHECKED))));

    CommandRun run = start("--port", PORT, "--asset", "P-1", "--check", "gasket=ok");

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains(PORT).contains("block the jar inlet");
    assertThat(desk.by).contains(StartedBy.COMMAND);
    assertThat(desk.visit.asset()).contains("P-1");
    assertThat(desk.visit.checks())
        .containsExactlyInAnyOrder(
            Check.of(CheckItem.JAR, CheckState.OK), Check.of(CheckItem.GASKET, CheckState.OK));
  }

  @Test
  void anotherPumpHasNotBeenLookedAt() {
    desk.visit(new Visit(Optional.of("P-1"), List.of(Check.of(CheckItem.JAR, CheckState.OK))));

    CommandRun run = start("--port", PORT, "--asset", "P-2", "--check", "gasket=ok");

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(desk.visit.asset()).contains("P-2");
    assertThat(desk.visit.checks()).containsExactly(Check.of(CheckItem.GASKET, CheckState.OK));
  }

  @Test
  void theLinkWithItsTokenDoesAsWell() {
    CommandRun run =
        CommandRun.of(
            "start", "--port", PORT, "--page", note.url() + "?token=" + note.token().orElseThrow());

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(CommandRun.of("start", "--port", PORT, "--page", note.url()).code())
        .isEqualTo(ExitCode.USAGE);
  }

  @Test
  void aMistakeIsSaidInALine() {
    assertThat(start()).satisfies(run -> isMistake(run, "several ports", ExitCode.USAGE));
    assertThat(start("--port", "COM9"))
        .satisfies(run -> isMistake(run, "does not read COM9", ExitCode.USAGE));
    assertThat(start("--port", PORT, "--check", "gasket=fine"))
        .satisfies(
            run ->
                isMistake(
                    run,
                    "no such state of a check; there are ok, not-ok, replaced, not-checked",
                    ExitCode.USAGE));
    assertThat(start("--port", PORT, "--asset", "(01)51022222233337(21)12"))
        .satisfies(run -> isMistake(run, "check digit is wrong", ExitCode.USAGE));
    assertThat(CommandRun.of("start", "--results", folder.resolve("none")))
        .satisfies(run -> isMistake(run, "no watch with a page is running", ExitCode.MACHINE));
    assertThat(desk.by).isEmpty();
  }

  @Test
  void aRefusalIsSaidInALine() {
    desk.refusal = Optional.of(StartRefusal.MAINS_FORBIDDEN);
    assertThat(start("--port", PORT))
        .satisfies(run -> isMistake(run, "do not switch the pump on", ExitCode.NOT_PASSED));
    desk.refusal = Optional.of(StartRefusal.TEST_RUNNING);
    assertThat(start("--port", PORT))
        .satisfies(run -> isMistake(run, "a test is running", ExitCode.NOT_PASSED));
    desk.refusal = Optional.of(StartRefusal.NOT_CONNECTED);
    assertThat(start("--port", PORT))
        .satisfies(run -> isMistake(run, "no sensor is connected", ExitCode.MACHINE));
  }

  @Test
  void aNoteThatAKilledWatchLeftLeadsToNobody() {
    page.close();

    assertThat(start("--port", PORT))
        .satisfies(run -> isMistake(run, "nobody answers", ExitCode.MACHINE));
  }

  private static void isMistake(CommandRun run, String text, int code) {
    assertThat(run.err()).contains(text).hasLineCount(1);
    assertThat(run.code()).isEqualTo(code);
    assertThat(run.out()).isEmpty();
  }
}

package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Somebody ends the guide or the search in the middle; Ctrl-C and TERM go the same way. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: signals are sent as on Linux")
class InterruptedDialogueTest {
  @TempDir private Path folder;

  private ProgramProcess start(String command, Object... more) throws Exception {
    Object[] args = new Object[6 + more.length];
    Path results = folder.resolve("results");
    Object[] first = {
      command, "SP-014", "--results", results, "--key", folder.resolve("keys/k.pem")
    };
    System.arraycopy(first, 0, args, 0, first.length);
    System.arraycopy(more, 0, args, first.length, more.length);
    return ProgramProcess.start(folder, args);
  }

  @Test
  void theGuideSaysHowToGoOn() throws Exception {
    try (ProgramProcess guide = start("trouble", "--by", "A. Nurse", "--answers", "yes,yes")) {
      guide.awaitOut("CAUTION.");
      guide.signal("TERM");

      assertThat(guide.awaitEnd()).isEqualTo(ExitCode.NOT_PASSED);
      assertThat(guide.err()).containsOnlyOnce("go on with --answers yes,yes").hasLineCount(1);
    }
  }

  @Test
  void aSearchWithoutAnEndIsNoGoodExit() throws Exception {
    try (ProgramProcess search = start("seek-leak", "--port", "sim:leak", "--jar-l", "2")) {
      search.awaitErr("a sensor is speaking");
      search.signal("TERM");

      assertThat(search.awaitEnd()).isEqualTo(ExitCode.NOT_PASSED);
      assertThat(search.err()).containsOnlyOnce("the search is not finished; no test counts yet");
    }
  }
}

package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Standard output carries the answer alone, and the answer all of it. */
@Timeout(120)
class StandardStreamsTest {
  @TempDir private Path folder;

  private Path sound() {
    Path file = folder.resolve("sound.log");
    CommandRun.of("simulate", "sound", "--rate", "20", "--out", file);
    return file;
  }

  /** As {@code replay --json a b ... | head -1} with a reader that goes after the first line. */
  @Test
  void aReaderThatGoesEarlyIsNoStackTrace() throws Exception {
    Path file = sound();
    Object[] args = new Object[62];
    java.util.Arrays.fill(args, file);
    args[0] = "replay";
    args[1] = "--json";
    Path err = folder.resolve("err");
    Process process =
        new ProcessBuilder(ProgramProcess.command(args)).redirectError(err.toFile()).start();
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      assertThat(reader.readLine()).startsWith("{\"budgets\":");
    }
    assertThat(process.waitFor()).isEqualTo(3);
    assertThat(Files.readString(err))
        .isEqualTo("thumbseal: standard output was closed before all was written to it\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"schema", "--help"})
  void anAnswerThatDoesNotArriveIsNoGoodExit(String command) {
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int octet) throws IOException {
            throw new IOException("No space left on device");
          }
        };
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream hiding = new PrintStream(full, true, StandardCharsets.UTF_8);
    Streams streams = new Streams(InputStream.nullInputStream(), hiding, err);
    assertThat(Main.run(new String[] {command}, streams)).isEqualTo(3);
    assertThat(err.toString(StandardCharsets.UTF_8)).hasLineCount(1);
  }

  /** A fault of the program, which only this class can have, is the one thing that is logged. */
  static final class Faulty {
    public static void main(String[] args) {
      org.tinylog.Logger.info("never to be seen");
      org.tinylog.Logger.warn("something odd");
      System.out.println("the answer");
    }
  }

  @Test
  void logsGoToStandardErrorFromWarningsOn() throws Exception {
    List<String> command = new java.util.ArrayList<>(ProgramProcess.command());
    command.set(command.size() - 1, Faulty.class.getName());
    Path err = folder.resolve("err");
    Process process = new ProcessBuilder(command).redirectError(err.toFile()).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    assertThat(out.strip()).isEqualTo("the answer");
    assertThat(Files.readString(err).strip())
        .matches("thumbseal: \\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d WARN: something odd");
  }

  @Test
  void helpIsTheAnswerAndPlainWhereThereIsNoTerminal() {
    CommandRun help = CommandRun.of("replay", "--help");
    assertThat(help.code()).isZero();
    assertThat(help.err()).isEmpty();
    assertThat(help.out()).contains("--ambient-kpa").doesNotContain("\u001b");
    assertThat(help.out().lines()).allMatch(l -> l.length() <= 80);
  }

  /** script(1) gives a terminal to the program: there help is coloured, unless NO_COLOR is set. */
  @Test
  void onATerminalNoColorIsObeyed() throws Exception {
    assumeTrue(onATerminal("true").code() == 0, "skipped: no script(1) of util-linux here");
    String help = String.join(" ", ProgramProcess.command("--help"));
    assertThat(onATerminal(help).out()).contains("thumbseal", "\u001b[");
    assertThat(onATerminal("NO_COLOR=1 " + help).out())
        .contains("thumbseal")
        .doesNotContain("\u001b[");
  }

  private CommandRun onATerminal(String command) throws Exception {
    try {
      ProcessBuilder builder =
          new ProcessBuilder("script", "-qec", command, folder.resolve("typescript").toString());
      builder.environment().put("TERM", "xterm");
      builder.environment().remove("NO_COLOR");
      Process process = builder.redirectErrorStream(true).start();
      process.getOutputStream().close();
      String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return new CommandRun(process.waitFor(), out, "");
    } catch (IOException e) {
      return new CommandRun(-1, "", String.valueOf(e.getMessage()));
    }
  }
}

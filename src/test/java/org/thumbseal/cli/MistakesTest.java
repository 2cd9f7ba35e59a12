package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.Sealer;
import org.thumbseal.link.OtherProgram;
import org.thumbseal.link.PtyPair;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.TrustStore;

/**
 * What goes wrong for people: one line that says what is wrong and what to do, the exit code of the
 * contract, and nothing on standard output.
 */
@Timeout(120)
class MistakesTest {
  @TempDir private static Path folder;
  private static Path key;

  @BeforeAll
  static void files() throws Exception {
    key = folder.resolve("keys/k.pem");
    KeyStore.create(key);
    CommandRun.of("simulate", "sound", "--rate", "20", "--out", folder.resolve("sound.log"));
    byte[] random = new byte[3_000];
    new Random(1).nextBytes(random);
    Files.write(folder.resolve("binary"), random);
    Files.createFile(folder.resolve("empty"));
    Files.createDirectory(folder.resolve("folder"));
    write("header.log", Files.readString(folder.resolve("sound.log")).substring(0, 60));
    write("table.csv", "time,p\n0,0\n1,0\n");
    write("typo.json", "{\"rise\": \"65 kPa\", \"riseTimeLimt\": \"10 s\"}");
    write("nounit.json", "{\"rise\": \"65\"}");
    write("number.json", "{\"rise\": 65}");
    write("second.json", "{\"rise\": \"65 s\"}");
    write("twice.json", "{\"rise\": \"65 kPa\", \"rise\": \"60 kPa\"}");
    write("broken.json", "{\"rise\": \"65 kPa\",");
  }

  private static void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  /** Runs what a person typed; {@code @} stands for the folder of the files above. */
  private static CommandRun typed(String line) {
    return CommandRun.of(Arrays.stream(line.replace("@", folder + "/").split(" ")).toArray());
  }

  private static void assertOneLine(CommandRun run, int code, String message) {
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("thumbseal: " + message).hasLineCount(1).endsWith("\n");
    assertThat(run.code()).isEqualTo(code);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          replay @none.log   | 2 | @none.log: no such file
          replay @binary     | 2 | @binary: not a capture file; for a table of times and pressures
          replay @table.csv  | 2 | @table.csv: not a capture file; for a table of times and pressures
          replay @empty      | 2 | @empty: is empty
          replay @folder     | 2 | @folder: is a directory; name the capture files in it
          replay @header.log | 1 | @header.log: no test in it (the inlet was never blocked)
          replay             | 2 | Missing required parameter: 'FILE' (see: thumbseal replay --help)
          verify @none.json  | 2 | @none.json: no such file
          verify @binary     | 2 | @binary: is not UTF-8 text
          verify @empty      | 2 | @empty: is not a JSON object
          verify @folder     | 2 | @folder: holds no results
          verify @twice.json | 2 | @twice.json: is not JSON: line 1, column 26: Duplicate Object
          verify @twice.json --trust @none.jwk | 2 | @none.jwk: no such file
          key show --key @none.pem             | 2 | @none.pem: no such key; make one with:
          simulate odd                         | 2 | no kind 'odd'; there are sound, slow,
          simulate sound --seed x  | 2 | Invalid value for option '--seed': 'x' is not a whole number
          simulate sound --repeat 9999999999 | 2 | Invalid value for option '--repeat': '9999999999' is
          watch --port sim:sound --page 99999 --results @r --key @k.pem | 2 | --page: '99999' is no
          schema tail              | 2 | Invalid value for positional parameter at index 0 (WHICH):
          """)
  void filesThatAreNotWhatIsAskedFor(String line, int code, String message) {
    assertOneLine(typed(line), code, message.replace("@", folder + "/"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --oops                 | Unknown option: '--oops' (see: thumbseal replay --help)
          --ambient-kpa 700      | --ambient-kpa must be between 40 and 115, not 700
          --ambient-kpa 101,3    | Invalid value for option '--ambient-kpa': '101,3' is not a number
          --ambient-kpa NaN      | Invalid value for option '--ambient-kpa': 'NaN' is not a number
          --altitude-m abc       | Invalid value for option '--altitude-m': 'abc' is not a number
          --altitude-m 0x10      | Invalid value for option '--altitude-m': '0x10' is not a number
          --altitude-m 99999     | --altitude-m must be between -500 and 11000, not 99999
          --jar-l -1             | --jar-l must be between 0.05 and 50, not -1
          --jar-l                | Missing required parameter for option '--jar-l' (N)
          --asset a\u0007b       | --asset must be 1 to 100 plain characters
          --criteria @none.json  | criteria @none.json: no such file
          --criteria @folder     | criteria @folder: is a directory, not a file
          --criteria @empty      | criteria @empty: is not a JSON object
          --criteria @typo.json  | criteria @typo.json: has no setting 'riseTimeLimt'; the settings
          --criteria @nounit.json | criteria @nounit.json: rise must be a number with its unit in
          --criteria @number.json | criteria @number.json: rise must be a text in quotes, such as
          --criteria @second.json | criteria @second.json: rise: 's' is not the unit of a pressure
          --criteria @twice.json  | criteria @twice.json: is not JSON: line 1, column 26: Duplicate
          --criteria @broken.json | criteria @broken.json: is not JSON: line 1, column
          --columns rubbish       | columns: 'rubbish' does not fit; write time=
          --columns time=time:s,pressure=q:kPa  | @table.csv: no column named 'q'; the table has: time
          --columns time=time:s,pressure=p:kPaa | columns: ':kPaa' does not fit; behind the name
          """)
  void optionsThatCannotBe(String options, String message) {
    assertOneLine(typed("replay @table.csv " + options), 2, message.replace("@", folder + "/"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          repaly x       | no command 'repaly'; there are demo, watch, start, replay, report, history,
          --oops         | Unknown option: '--oops' (see: thumbseal --help)
          help odd       | Unknown subcommand 'odd'.
          watch          | Missing required option: '--port=P' (see: thumbseal watch --help)
          watch --port sim:sound,speed=1000 | --port: 'sim:sound,speed=1000': speed must be between
          watch --port udp:there:1          | --port: 'udp:there:1' is no address known here: use
          watch --port sim:odd --port sim:odd | --port: the same port is given twice
          watch --port sim:sound --criteria @typo.json | criteria @typo.json: has no setting
          """)
  void commandsThatCannotBe(String line, String message) {
    assertOneLine(typed(line), 2, message.replace("@", folder + "/"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          @ttyNone        | 3 | @ttyNone: no such port (
          tcp:localhost:1 | 3 | tcp:localhost:1: Connection refused; is it switched on, and is the
          sim:odd         | 2 | sim:odd: no simulation 'odd'; there are sound, slow,
          file:@none      | 2 | file:@none: no such file
          file:@folder    | 2 | file:@folder: it is a directory; name a file in it
          @folder         | 2 | @folder: it is a directory, not a serial port; 'thumbseal ports'
          @sound.log      | 2 | @sound.log: it is a plain file, not a serial port; give raw bytes as
          """)
  void portsThatCannotBeOpened(String port, int code, String message) {
    String line = "watch --key @mistyped/keys/k.pem --results @mistyped --port " + port;
    assertOneLine(typed(line), code, message.replace("@", folder + "/"));
    // A mistyped port leaves no key and no directory behind.
    assertThat(folder.resolve("mistyped")).doesNotExist();
  }

  @Test
  @EnabledOnOs(
      value = OS.LINUX,
      disabledReason = "skipped: pseudo-terminals of socat are for Linux")
  void aPortInUse(@TempDir Path own) throws Exception {
    try (PtyPair pair = PtyPair.in(own)) {
      Process other = OtherProgram.holding(pair.port());
      CommandRun run = typed("watch --key @keys/k.pem --results @results --port " + pair.port());
      other.destroy();
      assertOneLine(run, 3, pair.port() + ": in use by another program; close that program");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          watch --port sim:sound --key @keys/k.pem --results @empty/sub
          replay @sound.log --key @keys/k.pem --results @empty/sub
          """)
  void aDirectoryThatCannotBeMade(String line) {
    assertOneLine(
        typed(line),
        3,
        folder + "/empty/sub: cannot be written: Not a directory; choose another --results");
  }

  /** Permissions do not stop root, but nobody makes folders in there. */
  @Test
  void aPlaceWhereNobodyMayWrite() {
    assumeTrue(Files.isDirectory(Path.of("/proc/self")), "skipped: no /proc here");
    assertOneLine(
        typed("replay @sound.log --key @keys/k.pem --results /proc/thumbseal"),
        3,
        "/proc/thumbseal: cannot be made; choose another --results directory");
    assertOneLine(
        typed("demo -o /proc/thumbseal"),
        3,
        "/proc/thumbseal cannot be opened: there is no such port or folder; name another place");
  }

  @Test
  void aDirectoryThatAWatchUses() throws Exception {
    Path locked = folder.resolve("locked");
    try (Archive archive =
        Archive.openForDaemon(locked, new Sealer(KeyStore.load(key).key(), TrustStore.of()))) {
      assertThat(archive.notes()).isEmpty();
      assertOneLine(
          typed("watch --port sim:sound --key @keys/k.pem --results @locked"),
          3,
          "another watch (process " + ProcessHandle.current().pid() + ", since ");
      CommandRun replay = typed("replay @sound.log --key @keys/k.pem --results @locked");
      assertThat(replay.err()).startsWith("thumbseal: sealed in ");
    }
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aKeyThatOthersCanRead(@TempDir Path own) throws Exception {
    Path open = Files.copy(key, own.resolve("open.pem"));
    Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rw-r--r--"));
    String line = "watch --port sim:sound --results @results --key ";
    assertOneLine(
        typed(line + open), 2, open + ": others can read this private key; run: chmod 600 " + open);
    assertOneLine(typed(line + "@folder"), 2, folder + "/folder: is a directory; name the key");
  }

  @Test
  void aCaptureCutInMidLineIsStillGraded() throws Exception {
    String whole = Files.readString(folder.resolve("sound.log"));
    int middle = whole.lastIndexOf('\n', whole.length() - 2) + 12;
    write("cut.log", whole.substring(0, middle));
    CommandRun run = typed("replay --json @cut.log");
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("\"verdict\":\"pass\"").hasLineCount(1);
  }

  @Test
  void oneBadFileAmongGoodOnes() {
    CommandRun run = typed("replay --json @none.log @sound.log @binary @sound.log");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out().lines()).hasSize(2).allMatch(l -> l.contains("\"verdict\":\"pass\""));
    assertThat(run.err().lines())
        .satisfiesExactly(
            l -> assertThat(l).isEqualTo("thumbseal: " + folder + "/none.log: no such file"),
            l -> assertThat(l).startsWith("thumbseal: " + folder + "/binary: not a capture file"));
  }
}

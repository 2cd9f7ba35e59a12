package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.Links;
import org.thumbseal.link.ManualClock;
import org.thumbseal.link.PortDescription;
import org.thumbseal.link.PortProbe;
import org.thumbseal.link.SerialPorts;
import org.thumbseal.link.SimulatedSensor.TimedLine;
import org.thumbseal.wire.Crc16;
import picocli.CommandLine;

@Timeout(60)
class PortsCommandTest {
  private static final Map<String, List<TimedLine>> SENSORS =
      Map.of(
          "speaking",
          List.of(
              new TimedLine(0, Crc16.seal("S,1,2,3")),
              new TimedLine(1_900_000, Crc16.seal("I,1,S-7,1.4,G,-100000,0,100"))),
          "nameless",
          List.of(new TimedLine(0, Crc16.seal("S,1,2,3"))),
          "late",
          List.of(new TimedLine(2_600_000, Crc16.seal("I,1,S-8,1.4,A,0,110000,12.5"))),
          "raving",
          List.of(new TimedLine(0, "hello")));

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private static Iterator<TimedLine> simulated(String kind) {
    List<TimedLine> lines = SENSORS.get(kind);
    return lines == null ? Collections.emptyIterator() : lines.iterator();
  }

  private int run(SerialPorts ports, String... args) {
    ManualClock clock = new ManualClock();
    Links links = new Links((kind, seed) -> simulated(kind), InputStream.nullInputStream(), clock);
    PortProbe probe = new PortProbe(clock, PortProbe.ONE_IDENTITY);
    return execute(new PortsCommand(ports, links, probe), args);
  }

  /** With the program's own way of saying failures. */
  private int execute(PortsCommand command, String... args) {
    OutputStream nowhere = OutputStream.nullOutputStream();
    Streams none = new Streams(InputStream.nullInputStream(), nowhere, nowhere);
    CommandLine line = new CommandLine(command);
    line.setOut(new PrintWriter(out, true)).setErr(new PrintWriter(err, true));
    line.setExecutionExceptionHandler(Main.commandLine(none).getExecutionExceptionHandler());
    return line.execute(args);
  }

  private static SerialPorts ports(String... paths) {
    List<PortDescription> all =
        List.of(paths).stream().map(path -> new PortDescription(path, "a port")).toList();
    return () -> all;
  }

  @Test
  void portsAreListedInColumns() {
    assertThat(run(ports("/dev/ttyUSB0", "COM3"))).isZero();
    assertThat(out).hasToString("/dev/ttyUSB0  a port\nCOM3          a port\n");
    assertThat(err).hasToString("");
  }

  @Test
  void noPortAtAllIsExitOneWithAWordOnStandardError() {
    assertThat(run(ports())).isEqualTo(1);
    assertThat(out).hasToString("");
    assertThat(err)
        .hasToString("thumbseal: no serial port found; plug the sensor in and look again\n");
  }

  @Test
  void aSystemThatDoesNotTellIsExitThree() {
    SerialPorts broken =
        () -> {
          throw new LinkUnavailable(Reason.NO_LIBRARY, "no library");
        };
    assertThat(run(broken)).isEqualTo(3);
    assertThat(err).hasToString("thumbseal: no library\n");
  }

  @Test
  void probingSaysWhoAnswers() {
    assertThat(run(ports("sim:speaking", "sim:raving"), "--probe")).isZero();
    assertThat(out)
        .hasToString(
            "sim:speaking  sensor S-7, firmware 1.4, gauge, -100 to 0 kPa, 100 Hz\n"
                + "sim:raving    something comes, but it is no sensor at this line speed"
                + " (PORT?baud=N); if a board prints plain numbers here: watch --port PORT --format"
                + " lines:...\n");
  }

  @Test
  void whenNoSensorAnswersItIsExitOneAndEachPortIsExplained() {
    String missing = folder + "/nowhere";
    assertThat(run(ports("sim:nameless", "sim:empty", "sim:late", "file:" + missing), "--probe"))
        .isEqualTo(1);
    assertThat(out.toString().lines().map(line -> line.replaceAll(".*  ", "")))
        .containsExactly(
            "speaks the protocol, but did not say who it is",
            "nothing comes",
            "nothing comes",
            "no such file");
    assertThat(err).hasToString("thumbseal: no sensor answered; is one plugged in and powered?\n");
  }

  @Test
  void namedPortsAreListenedOnInsteadOfAll() {
    assertThat(run(ports("sim:raving"), "sim:speaking")).isZero();
    assertThat(out.toString()).contains("S-7").doesNotContain("raving");
  }

  @Test
  void aNameThatIsNoAddressIsExitTwo() {
    assertThat(run(ports(), "udp:somewhere:1")).isEqualTo(2);
    assertThat(err.toString())
        .startsWith("thumbseal: 'udp:somewhere:1' is no address known here: ")
        .endsWith("\n")
        .hasLineCount(1);
  }

  @Test
  void probingEndsWhenThePatienceIsOver() {
    ManualClock clock = new ManualClock();
    Links links = new Links((kind, seed) -> simulated(kind), InputStream.nullInputStream(), clock);
    PortProbe probe = new PortProbe(clock, Duration.ofSeconds(1));
    assertThat(execute(new PortsCommand(ports("sim:late"), links, probe), "--probe")).isEqualTo(1);
    assertThat(clock.nanos()).isEqualTo(Duration.ofSeconds(1).toNanos());
  }
}

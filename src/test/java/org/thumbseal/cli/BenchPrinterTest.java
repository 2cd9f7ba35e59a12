package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;

class BenchPrinterTest {
  private final StringWriter out = new StringWriter();
  private final BenchPrinter printer =
      new BenchPrinter(new PrintWriter(out), new PrintWriter(new StringWriter()));

  @ParameterizedTest
  @EnumSource(Phase.class)
  void aPhaseIsOneLineThatFitsATerminalAfterADayToo(Phase phase) {
    printer.phase("/dev/ttyUSB0", new PhaseEvent.Entered(phase, 86_400.5, 12));
    assertThat(out.toString().stripTrailing())
        .startsWith("/dev/ttyUSB0: " + phase.name().toLowerCase(Locale.ROOT))
        .contains("86400.50 s")
        .hasLineCount(1)
        .hasSizeLessThanOrEqualTo(100);
  }

  @ParameterizedTest
  @EnumSource(Phase.class)
  void namesOfPortsCannotSteerTheTerminal(Phase phase) {
    printer.phase("tcp:\u001b[2J:1", new PhaseEvent.Entered(phase, 1, 12));
    assertThat(out.toString()).startsWith("tcp:\\u001B[2J:1: ").hasLineCount(1);
  }
}

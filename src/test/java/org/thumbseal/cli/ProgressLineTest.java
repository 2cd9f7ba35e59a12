package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
  private static final long TENTH = 100_000_000;

  private final StringWriter written = new StringWriter();
  private long now;

  private ProgressLine line(boolean visible) {
    return new ProgressLine(new PrintWriter(written), visible, () -> now);
  }

  @Test
  void isWrittenOverAndOverAndWipedAway() {
    ProgressLine line = line(true);
    line.show(1, 4);
    assertThat(written).hasToString("\r[#######.......................]  25 %, 1 of 4");

    now += TENTH;
    line.show(4, 4);
    assertThat(written.toString()).endsWith("\r[##############################] 100 %, 4 of 4");

    line.clear();
    assertThat(written.toString()).endsWith("\r" + " ".repeat(46) + "\r").doesNotContain("\n");
  }

  @Test
  void isNotWrittenMoreOftenThanEyesCanFollow() {
    ProgressLine line = line(true);
    line.show(1, 4);
    now += TENTH - 1;
    line.show(2, 4);

    assertThat(written.toString()).contains("1 of 4").doesNotContain("2 of 4");
  }

  @Test
  void whatIsNotThereIsNotWipedAway() {
    line(true).clear();

    assertThat(written.toString()).isEmpty();
  }

  @Test
  void nothingWhereNobodyLooks() {
    ProgressLine line = line(false);
    line.show(1, 4);
    line.clear();

    assertThat(written.toString()).isEmpty();
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.link.LinkUnavailable.Reason;

class SerialFaultTest {
  private static final SerialPorts NONE = List::of;

  // Numbers: errno of Linux (include/uapi/asm-generic/errno-base.h), from memory; 35 is EAGAIN of
  // macOS, from memory.
  @ParameterizedTest
  @CsvSource({
    "2, MISSING, no such port (no serial port is plugged in)",
    "6, MISSING, no such port (no serial port is plugged in)",
    "19, MISSING, no such port (no serial port is plugged in)",
    "11, BUSY, in use by another program; close that program",
    "16, BUSY, in use by another program; close that program",
    "35, BUSY, in use by another program; close that program",
    "25, WRONG_KIND, it does not behave like a serial port",
    "5, FAILED, cannot be opened (error 5 of the system); unplug it and plug it in again",
  })
  void posixErrorsBecomeOneLine(int code, Reason reason, String message) {
    LinkUnavailable failure = SerialFault.ofPosix(code, NONE);
    assertThat(failure.reason()).isEqualTo(reason);
    assertThat(failure).hasMessage(message);
  }

  @ParameterizedTest
  @CsvSource({"1", "13"})
  void permissionDeniedNamesTheGroupAndTheNewLogin(int code) {
    LinkUnavailable failure = SerialFault.ofPosix(code, NONE);
    assertThat(failure.reason()).isEqualTo(Reason.DENIED);
    assertThat(failure).hasMessageContaining("dialout").hasMessageEndingWith("and log in again");
  }

  // Numbers: system error codes of Windows, from memory.
  @ParameterizedTest
  @CsvSource({"2, MISSING", "3, MISSING", "5, BUSY", "32, BUSY", "31, FAILED"})
  void windowsErrorsHaveTheirOwnNumbers(int code, Reason reason) {
    assertThat(SerialFault.ofWindows(code, NONE).reason()).isEqualTo(reason);
  }

  @Test
  void aLongListOfPortsIsCutShort() {
    SerialPorts many =
        () ->
            IntStream.range(0, 9)
                .mapToObj(i -> new PortDescription("/dev/ttyS" + i, "serial"))
                .toList();
    assertThat(SerialFault.noSuchPort(many))
        .isEqualTo(
            "no such port (there are: /dev/ttyS0, /dev/ttyS1, /dev/ttyS2, /dev/ttyS3, /dev/ttyS4,"
                + " /dev/ttyS5, ...)");
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.link.LinkUnavailable.Reason;

class SerialFaultTest {
  private static final SerialPorts NONE = List::of;
  private static final Path NOWHERE = Path.of("no", "such", "port");

  @TempDir Path folder;

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
    LinkUnavailable failure = SerialFault.ofPosix(code, NOWHERE, NONE);
    assertThat(failure.reason()).isEqualTo(reason);
    assertThat(failure).hasMessage(message);
  }

  @ParameterizedTest
  @CsvSource({"1", "13"})
  void permissionDeniedNamesTheGroupAndTheNewLogin(int code) {
    LinkUnavailable failure = SerialFault.ofPosix(code, NOWHERE, NONE);
    assertThat(failure.reason()).isEqualTo(Reason.DENIED);
    assertThat(failure)
        .hasMessageContaining("'sudo usermod -aG dialout ")
        .hasMessageContaining("then log out and in again")
        .hasMessageEndingWith("(a systemd service: SupplementaryGroups=dialout)");
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void theGroupNamedIsThatOfTheDevice() throws Exception {
    Path port = Files.createFile(folder.resolve("ttyUSB0"));
    giveTo(port, "uucp");
    assertThat(SerialFault.ofPosix(13, port, NONE))
        .hasMessageContaining("belongs to group uucp: 'sudo usermod -aG uucp ")
        .hasMessageEndingWith("(a systemd service: SupplementaryGroups=uucp)");
  }

  private static void giveTo(Path port, String name) {
    try {
      UserPrincipalLookupService names = port.getFileSystem().getUserPrincipalLookupService();
      Files.getFileAttributeView(port, PosixFileAttributeView.class)
          .setGroup(names.lookupPrincipalByGroupName(name));
    } catch (IOException e) {
      abort("skipped: no group " + name + ", or this user may not give it a file");
    }
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

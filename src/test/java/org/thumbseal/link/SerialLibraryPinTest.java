package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * How jSerialComm 2.11.4 behaves where our adapter leans on it, or works around it. A new version
 * that fails here is no fault of the version, but a reason to read the adapter again.
 */
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class SerialLibraryPinTest {
  private static final int ENOENT = 2;

  @TempDir Path folder;

  @BeforeAll
  static void load() throws LinkUnavailable {
    NativeLibrary.load();
  }

  private static SerialPort opened(PtyPair pair) {
    SerialPort port = SerialPort.getCommPort(pair.port());
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 250, 0);
    assertThat(port.openPort()).isTrue();
    return port;
  }

  private static int readUntilNotSilent(SerialPort port) {
    int count = 0;
    while (count == 0) {
      count = port.readBytes(new byte[16], 16);
    }
    return count;
  }

  @Test
  void readTimeoutIsRoundedUpToTenthsOfASecond() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      SerialPort port = opened(pair);
      assertThat(port.getReadTimeout()).isEqualTo(300);
      assertThat(port.readBytes(new byte[16], 16)).isZero();
      port.closePort();
    }
  }

  @Test
  void afterAHangUpOnlyAReadTells() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      SerialPort port = opened(pair);
      pair.unplug();
      assertThat(readUntilNotSilent(port)).isEqualTo(-1);
      assertThat(port.isOpen()).isTrue();
      assertThat(port.bytesAvailable()).isEqualTo(-1);
      assertThat(port.closePort()).isTrue();
      assertThat(port.openPort()).isFalse();
      assertThat(port.getLastErrorCode()).isEqualTo(ENOENT);
    }
  }

  @Test
  void aSecondOpeningInOneProcessFailsAsIfThePortWereMissing() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      SerialPort port = opened(pair);
      SerialPort second = SerialPort.getCommPort(pair.port());
      assertThat(second.openPort()).isFalse();
      assertThat(second.getLastErrorCode()).isEqualTo(ENOENT);
      port.closePort();
    }
  }

  @Test
  void aLinkedNameIsResolvedWhenThePortObjectIsMade() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      String target = Files.readSymbolicLink(Path.of(pair.port())).toString();
      assertThat(SerialPort.getCommPort(pair.port()).getSystemPortPath()).isEqualTo(target);
    }
  }

  @Test
  void aMissingPathFallsBackToTheLastNameInDev() {
    assertThat(SerialPort.getCommPort(folder + "/null").getSystemPortPath()).isEqualTo("/dev/null");
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.LinkUnavailable.Reason;

/** Names as the device manager of Linux makes them (its rules for serial ports; from memory). */
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: links of this kind are for Linux")
class PortNamesTest {
  @TempDir Path given;
  private Path folder;

  @BeforeEach
  void folders() throws Exception {
    folder = given.toRealPath();
    Files.createDirectory(folder.resolve("by-id"));
    Files.createDirectory(folder.resolve("by-path"));
    System.setProperty(PortNames.BY_ID, folder.resolve("by-id").toString());
    System.setProperty(PortNames.BY_PATH, folder.resolve("by-path").toString());
  }

  @AfterEach
  void usualFolders() {
    System.clearProperty(PortNames.BY_ID);
    System.clearProperty(PortNames.BY_PATH);
  }

  private Path device(String name) throws IOException {
    return Files.createFile(folder.resolve(name));
  }

  private Path link(String name, Path device) throws IOException {
    return Files.createSymbolicLink(folder.resolve(name), device);
  }

  @Test
  void theNameThatFollowsTheBoardIsTheBest() throws Exception {
    Path one = device("ttyUSB0");
    Path other = device("ttyACM0");
    Path oneId = link("by-id/usb-one_17", one);
    Path otherId = link("by-id/usb-other_4", other);
    link("by-path/usb-0:1", one);
    link("by-path/usb-0:2", other);
    assertThat(PortNames.now().devices()).containsExactlyInAnyOrder(one, other);
    assertThat(PortNames.now().best(List.of(one, other))).containsExactly(oneId, otherId);
  }

  /** Two chips without a serial number: one link by id, which leads to the one plugged in last. */
  @Test
  void boardsThatShareANameAreCalledByTheirSockets() throws Exception {
    Path one = device("ttyUSB0");
    Path other = device("ttyUSB1");
    link("by-id/usb-bridge", other);
    Path onePath = link("by-path/usb-0:1", one);
    Path otherPath = link("by-path/usb-0:2", other);
    assertThat(PortNames.now().best(List.of(one, other))).containsExactly(onePath, otherPath);
  }

  @Test
  void aDeviceWithoutAnyOtherNameKeepsItsOwnAndALinkToNothingIsNone() throws Exception {
    Path one = device("ttyUSB0");
    link("by-id/usb-gone", folder.resolve("ttyUSB9"));
    assertThat(PortNames.now().devices()).isEmpty();
    assertThat(PortNames.now().best(List.of(one))).containsExactly(one);
  }

  @Test
  void aListedPortIsShownWithItsLastingName() throws Exception {
    Path one = device("ttyUSB0");
    PortNames none = PortNames.now();
    Path id = link("by-id/usb-one_17", one);
    assertThat(SystemPorts.describe(one + "", "USB serial", PortNames.now()).text())
        .isEqualTo("USB serial, lasting name " + id);
    assertThat(SystemPorts.describe(one + "", "USB serial", none).text()).isEqualTo("USB serial");
  }

  @Test
  void aStarStandsForTheOneNameThatFits() throws Exception {
    Path fitting = link("by-id/usb-maker_tp-01-if00", Path.of("/dev/null"));
    link("by-id/usb-maker_tp-02-if00", Path.of("/dev/null"));
    assertThat(resolved("*tp-01*")).isEqualTo(fitting.toString());
    assertRefused("*tp-03*", Reason.MISSING, "no such port (no serial port is plugged in)");
    assertRefused(
        "usb-maker*",
        Reason.AMBIGUOUS,
        "several ports fit (usb-maker_tp-01-if00, usb-maker_tp-02-if00); write more of the name");
  }

  private String resolved(String pattern) throws LinkUnavailable {
    return SerialPath.resolve(folder + "/by-id/" + pattern, List::of);
  }

  private void assertRefused(String pattern, Reason reason, String message) {
    assertThatThrownBy(() -> resolved(pattern))
        .isInstanceOfSatisfying(
            LinkUnavailable.class, e -> assertThat(e.reason()).isEqualTo(reason))
        .hasMessage(message);
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.LinkUnavailable.Reason;

@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class SerialLinkTest extends LiveLinkContract {
  @TempDir Path folder;

  private static Link link(String port) {
    SerialPorts ports = () -> List.of(new PortDescription("/dev/ttyUSB7", "a sensor"));
    return new SerialLink(new LinkAddress.Serial(port, port, SerialSettings.STANDARD), ports);
  }

  private record Terminal(PtyPair pair) implements FarEnd {
    @Override
    public Link link() {
      return SerialLinkTest.link(pair.port());
    }

    @Override
    public void send(byte[] bytes) throws IOException {
      pair.send(bytes);
    }

    @Override
    public void end() throws IOException {
      pair.unplug();
    }

    @Override
    public void close() throws IOException {
      pair.close();
    }
  }

  @Override
  FarEnd farEnd() throws IOException {
    return new Terminal(PtyPair.in(folder));
  }

  @Test
  void aPortThatCameBackIsReadByTheSameLink() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      Link link = link(pair.port());
      LinkConnection before = link.open();
      pair.unplug();
      assertThat(read(before, 1, 16)).isEmpty();
      before.close();
      pair.plugIn();
      try (LinkConnection after = link.open()) {
        pair.send(new byte[] {'y'});
        assertThat(read(after, 1, 16)).containsExactly('y');
      }
    }
  }

  @Test
  void aPortHeldByAnotherProgramIsSaidToBeInUse() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      Process other = OtherProgram.holding(pair.port());
      assertRefused(
          () -> link(pair.port()).open(),
          Reason.BUSY,
          "in use by another program; close that program");
      other.destroy();
      await().atMost(Duration.ofSeconds(20)).until(() -> !other.isAlive());
      link(pair.port()).open().close();
    }
  }

  @Test
  void aPortGivenTwiceIsSaidSo() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        LinkConnection first = link(pair.port()).open()) {
      assertRefused(
          () -> link(pair.port()).open(),
          Reason.BUSY,
          "already open in this program; give each port once");
      assertThat(first.read(new byte[16])).isZero();
    }
  }

  @Test
  void aMissingPortListsThoseThereAre() {
    assertRefused(
        () -> link("/dev/ttyNoSuchPort").open(),
        Reason.MISSING,
        "no such port (there are: /dev/ttyUSB7)");
  }

  @Test
  void theLibraryIsNotLetToOpenAPortOfTheSameLastName() throws Exception {
    // Given /x/null the library itself would open /dev/null.
    assertRefused(
        () -> link(folder + "/null").open(),
        Reason.MISSING,
        "no such port (there are: /dev/ttyUSB7)");
  }

  @Test
  void aDirectoryIsSaidSo() {
    assertRefused(
        () -> link(folder.toString()).open(),
        Reason.WRONG_KIND,
        "it is a directory, not a serial port; 'thumbseal ports' lists them");
  }

  @Test
  void aPlainFileIsSaidSoWithWhatToDo() throws IOException {
    Path file = Files.writeString(folder.resolve("capture.log"), "# thumbseal capture 1\n");
    assertRefused(
        () -> link(file.toString()).open(),
        Reason.WRONG_KIND,
        "it is a plain file, not a serial port; give raw bytes as file:PATH, a capture to"
            + " 'thumbseal replay'");
  }

  @Test
  void aDeviceThatIsNoPortIsRefused() {
    assertThatThrownBy(() -> link("/dev/null").open()).isInstanceOf(LinkUnavailable.class);
  }

  private static void assertRefused(ThrowingCallable opening, Reason reason, String message) {
    assertThatThrownBy(opening)
        .isInstanceOfSatisfying(
            LinkUnavailable.class, e -> assertThat(e.reason()).isEqualTo(reason))
        .hasMessage(message);
  }
}

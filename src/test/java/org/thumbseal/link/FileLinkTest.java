package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.LinkUnavailable.Reason;

class FileLinkTest extends LinkContract {
  @TempDir Path folder;

  private Link link(Path path) {
    return new FileLink(new LinkAddress.RawFile("file:" + path, path));
  }

  @Override
  FarEnd farEnd() throws IOException {
    Path file = Files.write(folder.resolve("bytes"), new byte[0]);
    return new FarEnd() {
      @Override
      public Link link() {
        return FileLinkTest.this.link(file);
      }

      @Override
      public void send(byte[] bytes) throws IOException {
        Files.write(file, bytes, StandardOpenOption.APPEND);
      }

      @Override
      public void end() {}
    };
  }

  @Test
  void aMissingFileIsSaidSo() {
    assertRefused(folder.resolve("nowhere"), Reason.UNKNOWN, "no such file");
  }

  @Test
  void aDirectoryIsSaidSo() {
    assertRefused(folder, Reason.WRONG_KIND, "it is a directory; name a file in it");
  }

  private void assertRefused(Path path, Reason reason, String message) {
    assertThatThrownBy(() -> link(path).open())
        .isInstanceOfSatisfying(
            LinkUnavailable.class, e -> assertThat(e.reason()).isEqualTo(reason))
        .hasMessage(message);
  }
}

package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AccessTokenTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void place() {
    file = folder.resolve("key/page-token");
  }

  @Test
  void aTokenIsAlwaysTheSameUntilAnotherIsMade() throws Exception {
    AccessToken first = AccessToken.loadOrCreate(file);

    assertThat(AccessToken.loadOrCreate(file).text()).isEqualTo(first.text());
    AccessToken second = AccessToken.create(file);
    assertThat(second.text()).isNotEqualTo(first.text());
    assertThat(AccessToken.loadOrCreate(file).matches(second.text())).isTrue();
    assertThat(second.matches(first.text())).isFalse();
  }

  @Test
  void itHas128BitsAndItsOwnerAloneCanReadIt() throws Exception {
    AccessToken token = AccessToken.create(file);

    assertThat(Base64Url.decode(token.text(), 16)).isPresent();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
  }

  @Test
  void aFileThatIsNoneOrThatOthersCanReadIsRefused() throws Exception {
    AccessToken.create(file);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    assertThatThrownBy(() -> AccessToken.loadOrCreate(file))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("chmod 600");

    AccessToken.writePrivate(file, "short\n");
    assertThatThrownBy(() -> AccessToken.loadOrCreate(file))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("--new-token");
  }
}

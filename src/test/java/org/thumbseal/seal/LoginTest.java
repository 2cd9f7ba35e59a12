package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The file that holds what another computer asks for. */
@DisabledOnOs(OS.WINDOWS)
class LoginTest {
  @TempDir private Path folder;

  private Path file(String text, String rights) throws Exception {
    Path file = Files.writeString(folder.resolve("login"), text.replace("\\n", "\n"));
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(rights));
  }

  @Test
  void aNameAndAPassword() throws Exception {
    Login login = Login.read(file("# broker\n\nuser=bench\npassword= a=b \r\n", "rw-------"));
    assertThat(login.user()).contains("bench");
    assertThat(login.secret()).isEqualTo(" a=b ");
    assertThat(login.toString()).doesNotContain("a=b");
  }

  @Test
  void aToken() throws Exception {
    Login login = Login.read(file("token=abc", "r--------"));
    assertThat(login.user()).isEmpty();
    assertThat(login.secret()).isEqualTo("abc");
  }

  @ParameterizedTest
  @CsvSource({"rw-r-----", "rw----r--", "rw--w----"})
  void othersMustNotGetAtIt(String rights) throws Exception {
    Path file = file("token=abc", rights);
    assertThatThrownBy(() -> Login.read(file))
        .isInstanceOf(KeyException.class)
        .hasMessage(file + ": others can read this password; run: chmod 600 " + file);
  }

  /** What stands there may be the password: it is not told. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "s3cret|line 1: write user=, password= or token= and the value",
        "user=a|write two lines, user=NAME and password=..., or one, token=...",
        "password=s3cret|write two lines",
        "user=a\\ntoken=s3cret|write two lines",
        "user=a\\npassword=|line 2: write user=, password= or token=",
        "user=a\\nuser=b\\npassword=s3cret|line 2: says user a second time",
        "user=a\\npasswort=s3cret|line 2: write user=",
        "token=s3\u0007cret|line 1: holds a control character",
      })
  void whatCannotBe(String text, String why) throws Exception {
    Path file = file(text, "rw-------");
    assertThatThrownBy(() -> Login.read(file))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining(why)
        .hasMessageNotContaining("s3cret");
  }

  @Test
  void noFile() {
    assertThatThrownBy(() -> Login.read(folder.resolve("none")))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("none: no such file");
    assertThatThrownBy(() -> Login.read(folder))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("is no plain file");
  }
}

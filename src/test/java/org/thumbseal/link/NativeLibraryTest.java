package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Loading happens once a process, so each case is a process of its own with folders of its own. */
@DisabledOnOs(
    value = OS.WINDOWS,
    disabledReason = "skipped: looks at POSIX permissions and folders")
class NativeLibraryTest {
  @TempDir Path folder;

  /** Loads the library in a process of its own; prints what came of it. */
  static final class Program {
    private Program() {}

    public static void main(String[] args) {
      try {
        NativeLibrary.load();
        String tmp = System.getProperty("java.io.tmpdir");
        System.out.println("loaded " + SerialPorts.system().list().size() + " " + tmp);
      } catch (LinkUnavailable e) {
        System.out.println(e.reason() + " " + e.getMessage());
      }
    }
  }

  private String run(String... options) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(options));
    command.add(Program.class.getName());
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return said.strip();
  }

  private Path made(String name) throws IOException {
    return Files.createDirectory(folder.resolve(name));
  }

  private static List<Path> within(Path path) throws IOException {
    try (Stream<Path> all = Files.walk(path)) {
      return all.filter(each -> !each.equals(path)).toList();
    }
  }

  @Test
  void nothingIsLeftInTheSharedFoldersAndNothingOfTheLibrarysOwn() throws Exception {
    Path temporary = made("tmp");
    Path home = made("home");
    String said = run("-Djava.io.tmpdir=" + temporary, "-Duser.home=" + home);
    assertThat(said).startsWith("loaded ").endsWith(" " + temporary);
    assertThat(within(temporary)).isEmpty();
    assertThat(within(home)).isEmpty();
  }

  @Test
  void aFilePlantedInTheLibrarysSharedFolderIsNeitherLoadedNorTouched() throws Exception {
    Path temporary = made("tmp");
    Path planted = temporary.resolve("jSerialComm/2.11.4/libjSerialComm.so");
    Files.createDirectories(planted.getParent());
    Files.writeString(planted, "not ours");
    Files.writeString(planted.resolveSibling("older"), "not ours either");
    assertThat(run("-Djava.io.tmpdir=" + temporary)).startsWith("loaded ");
    assertThat(planted).hasContent("not ours");
    assertThat(planted.resolveSibling("older")).exists();
  }

  @Test
  void theHomeFolderServesWhereTheTemporaryOneIsGone() throws Exception {
    Path home = made("home");
    String said = run("-Djava.io.tmpdir=" + folder.resolve("gone"), "-Duser.home=" + home);
    assertThat(said).startsWith("loaded ");
    assertThat(within(home)).isEmpty();
  }

  @Test
  void withoutAnyFolderTheCureIsSaid() throws Exception {
    String gone = folder.resolve("gone").toString();
    assertThat(run("-Djava.io.tmpdir=" + gone, "-Duser.home=" + gone))
        .startsWith("NO_LIBRARY the serial library cannot be loaded;")
        .endsWith("start Java with -DjSerialComm.library.path=ITS_FOLDER")
        .doesNotContain("\n");
  }

  @Test
  void aMachineTheLibraryHasNoFileForIsToldTheCure() throws Exception {
    assertThat(run("-Dos.arch_full=abacus")).startsWith("NO_LIBRARY ").doesNotContain("\n");
  }

  @Test
  void onlyTheOwnerCanEnterTheFolderItIsUnpackedInto() throws Exception {
    try (PrivateFolder unpacked = PrivateFolder.in(folder).orElseThrow()) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(unpacked.path())))
          .isEqualTo("rwx------");
    }
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@DisabledOnOs(value = OS.WINDOWS, disabledReason = "skipped: looks at POSIX permissions")
class UnpackedLibraryTest {
  private static final LibraryTable TABLE = LibraryTable.ofProgram();

  @TempDir Path folder;

  private PrivateFolder fresh(String name) throws IOException {
    Path parent = Files.createDirectories(folder.resolve(name));
    return PrivateFolder.in(parent.toString()).orElseThrow();
  }

  private static String rights(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  @Test
  void onlyTheOwnerCanReachWhatIsUnpackedAndNobodyWritesIt() throws Exception {
    try (PrivateFolder unpacked = fresh("a")) {
      LibraryPlace place =
          new UnpackedLibrary(TABLE, "Linux", file -> true).into(List.of(unpacked)).orElseThrow();

      assertThat(place.folder()).isEqualTo(unpacked.path());
      try (Stream<Path> all = Files.walk(unpacked.path())) {
        for (Path path : all.toList()) {
          assertThat(rights(path))
              .as(path.toString())
              .isEqualTo(Files.isDirectory(path) ? "rwx------" : "r-x------");
        }
      }
      for (String name : TABLE.names("Linux")) {
        assertThat(TABLE.holds(name, Files.readAllBytes(unpacked.path().resolve(name)))).isTrue();
      }
    }
  }

  @Test
  void theNextFolderServesWhereTheFirstForbidsExecution() throws Exception {
    try (PrivateFolder forbidding = fresh("a");
        PrivateFolder permitting = fresh("b")) {
      List<PrivateFolder> both = List.of(forbidding, permitting);

      assertThat(
              new UnpackedLibrary(TABLE, "Linux", file -> file.startsWith(permitting.path()))
                  .into(both))
          .map(LibraryPlace::folder)
          .contains(permitting.path());
      assertThat(new UnpackedLibrary(TABLE, "OSX", file -> false).into(List.of(fresh("c"))))
          .isEmpty();
    }
  }

  @Test
  void aFileWithoutTheRightIsNotTakenForExecutable() throws Exception {
    Path file = Files.createFile(folder.resolve("plain"));
    assertThat(UnpackedLibrary.executable(file)).isFalse();
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r-x------"));
    assertThat(UnpackedLibrary.executable(file)).isTrue();
  }

  @Test
  void whatAnEarlierRunLeftIsTakenAwayAfterADay() throws Exception {
    Instant now = Instant.now();
    Path target = Files.createFile(Files.createDirectory(folder.resolve("mine")).resolve("kept"));
    Path old = left("old", now.minus(Duration.ofHours(25)));
    Path young = left("young", now.minus(Duration.ofHours(23)));
    Path other = Files.createDirectory(folder.resolve("other-program"));
    Files.setLastModifiedTime(other, FileTime.from(now.minus(Duration.ofDays(9))));
    Files.createSymbolicLink(old.resolve("link"), target.getParent());
    Files.setLastModifiedTime(old, FileTime.from(now.minus(Duration.ofHours(25))));

    LeftFolders.removeBeside(PrivateFolder.in(folder.toString()).orElseThrow());

    assertThat(old).doesNotExist();
    assertThat(young.resolve("file")).exists();
    assertThat(other).exists();
    assertThat(target).exists();
  }

  private Path left(String name, Instant when) throws IOException {
    Path left = Files.createDirectory(folder.resolve(PrivateFolder.PREFIX + name));
    Files.createFile(left.resolve("file"));
    Files.setLastModifiedTime(left, FileTime.from(when));
    return left;
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;
import org.thumbseal.seal.Sha256;

/** The table against the jar it speaks of: an upgrade without a new table fails here. */
class LibraryTableTest {
  private static Map<String, String> digestsOfTheJar() throws Exception {
    Path jar =
        Path.of(SerialPort.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    Map<String, String> digests = new TreeMap<>();
    try (JarFile open = new JarFile(jar.toFile())) {
      for (JarEntry entry : open.stream().filter(LibraryTableTest::isNative).toList()) {
        digests.put(entry.getName(), digest(open, entry));
      }
    }
    return digests;
  }

  private static boolean isNative(JarEntry entry) {
    return entry.getName().matches("[A-Z]\\w+/[^/]+/(lib)?jSerialComm\\.(so|dll|jnilib)");
  }

  private static String digest(JarFile jar, JarEntry entry) throws IOException {
    try (InputStream in = jar.getInputStream(entry)) {
      return Sha256.hex(in);
    }
  }

  @Test
  void everyNativeFileOfTheJarIsInItAndNoOther() throws Exception {
    assertThat(LibraryTable.ofProgram().digests())
        .hasSizeGreaterThan(20)
        .isEqualTo(digestsOfTheJar());
  }

  @Test
  void aFileIsHeldToItsOwnDigest() throws Exception {
    LibraryTable table = LibraryTable.ofProgram();
    byte[] content = content("/Linux/x86_64/libjSerialComm.so");

    assertThat(table.holds(content)).isTrue();
    assertThat(table.holds("Linux/x86_64/libjSerialComm.so", content)).isTrue();
    assertThat(table.holds("Linux/x86/libjSerialComm.so", content)).isFalse();
    content[content.length / 2] ^= 1;
    assertThat(table.holds(content)).isFalse();
    assertThat(table.holds("Linux/x86_64/libjSerialComm.so", content)).isFalse();
  }

  static byte[] content(String name) throws IOException {
    try (InputStream in = SerialPort.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }

  /** Names of systems as Java reports them; from memory, but Linux. */
  @Test
  void aSystemHasItsFolderAndFilesInTheTable() {
    Map<String, String> folders =
        Map.of(
            "Linux", "Linux",
            "Windows 11", "Windows",
            "Mac OS X", "OSX",
            "FreeBSD", "FreeBSD",
            "OpenBSD", "OpenBSD",
            "SunOS", "Solaris");

    folders.forEach(
        (name, folder) -> {
          assertThat(LibrarySystem.folder(name)).as(name).contains(folder);
          assertThat(LibraryTable.ofProgram().names(folder))
              .as(name)
              .isNotEmpty()
              .allSatisfy(
                  file -> assertThat(LibrarySystem.fileNames(folder)).anyMatch(file::endsWith));
        });
    assertThat(LibrarySystem.folder("Abacus OS")).isEmpty();
  }
}

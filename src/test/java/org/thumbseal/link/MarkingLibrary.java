package org.thumbseal.link;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A native library that leaves a mark in the working folder as soon as a process loads it. */
record MarkingLibrary(Path file) {
  static final String MARK = "was-loaded";

  private static final String SOURCE =
      """
      #include <fcntl.h>
      #include <unistd.h>
      __attribute__((constructor)) static void mark(void) {
        close(open("%s", O_CREAT | O_WRONLY, 0600));
      }
      """;

  static MarkingLibrary in(Path folder) throws Exception {
    Path source = Files.writeString(folder.resolve("mark.c"), SOURCE.formatted(MARK));
    Path file = folder.resolve("mark.so");
    assumeTrue(
        compiles("cc", "-shared", "-fPIC", "-o", file.toString(), source.toString()),
        "skipped: no C compiler here to build a library that should not be loaded");
    return new MarkingLibrary(file);
  }

  private static boolean compiles(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command).inheritIO().start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** Puts a copy there. */
  Path plant(Path path) throws IOException {
    Files.createDirectories(path.getParent());
    return Files.copy(file, path);
  }
}

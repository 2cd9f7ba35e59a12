package org.thumbseal.cli;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A small disk of its own; only root may mount one. */
public final class SmallDisk implements Closeable {
  private final Path folder;

  private SmallDisk(Path folder) {
    this.folder = folder;
  }

  /** Mounts one of 1 MiB here; skips the test where that is not allowed. */
  static SmallDisk at(Path folder) throws IOException {
    return at(folder, 1024);
  }

  /** Mounts one of so many KiB here, at most 2048; skips the test where that is not allowed. */
  public static SmallDisk at(Path folder, int kib) throws IOException {
    Files.createDirectories(folder);
    String size = "size=" + kib + "k";
    boolean mounted = run("mount", "-t", "tmpfs", "-o", size, "tmpfs", folder.toString());
    assumeTrue(mounted, "skipped: no tmpfs may be mounted here (that takes root)");
    return new SmallDisk(folder);
  }

  /** Takes all the room that is left. */
  public void fill() {
    try (var out = Files.newOutputStream(ballast())) {
      for (int i = 0; i < 4096; i++) {
        out.write(new byte[1024]);
      }
      throw new AssertionError("4 MiB fit on a smaller disk");
    } catch (IOException e) {
      // Full, as wanted.
    }
  }

  /** Gives the room back. */
  public void free() throws IOException {
    Files.delete(ballast());
  }

  private Path ballast() {
    return folder.resolve("ballast");
  }

  /** From now on nothing can be opened for writing: a second, read-only view lies on top. */
  void lock() {
    String name = folder.toString();
    if (!run("mount", "--bind", name, name) || !run("mount", "-o", "remount,bind,ro", name)) {
      throw new AssertionError("cannot be made read-only");
    }
  }

  /** Takes the read-only view away. */
  void unlock() {
    run("umount", folder.toString());
  }

  private static boolean run(String... command) {
    try {
      return new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .onExit()
              .join()
              .exitValue()
          == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public void close() {
    run("umount", "-l", folder.toString());
  }
}

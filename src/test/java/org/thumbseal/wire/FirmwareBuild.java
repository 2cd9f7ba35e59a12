package org.thumbseal.wire;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Makes what is under {@code firmware-notes/firmware} in a folder of its own, and runs it. Where
 * the compilers are missing, the tests that ask for one are skipped.
 */
public final class FirmwareBuild {
  private static final Path FIRMWARE = FencedBlock.NOTES.resolve("firmware");

  private final Path folder;

  private FirmwareBuild(Path folder) {
    this.folder = folder;
  }

  /** For this computer; skips the test where there is no compiler. */
  public static FirmwareBuild onThisComputer(Path folder) {
    assumeTrue(
        installed("cc") && installed("make"),
        "skipped: cc and make are not installed, so the sensor's core cannot be compiled");
    return new FirmwareBuild(folder);
  }

  /** For the board as well, and a simulated board to run it; skips the test without them. */
  public static FirmwareBuild forTheBoard(Path folder) {
    FirmwareBuild build = onThisComputer(folder);
    assumeTrue(
        installed("avr-gcc") && Files.exists(Path.of("/usr/include/simavr/sim_avr.h")),
        "skipped: avr-gcc, libsimavr-dev and libelf-dev are not installed, so the firmware cannot"
            + " be run on a simulated board");
    return build;
  }

  private static boolean installed(String program) {
    return Stream.of(System.getenv("PATH").split(":", -1))
        .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
  }

  /** What make makes, by its name; with settings such as {@code EXTRA=-DRATE_HZ=200}. */
  public Path make(String target, String... settings) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(List.of("make", "-s", "-C", FIRMWARE.toString(), "OUT=" + folder));
    command.addAll(List.of(settings));
    boolean aim = target.equals("check") || target.equals("size");
    command.add(aim ? target : folder.resolve(target).toString());
    runs(command);
    return folder.resolve(target);
  }

  /**
   * What a program writes; it has to end well.
   *
   * @throws IllegalStateException with what it said if it does not
   */
  public static String runs(List<String> command) throws IOException, InterruptedException {
    Path out = Files.createTempFile("firmware", ".txt");
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(out.toFile())
              .start();
      int code = process.waitFor();
      String said = Files.readString(out, StandardCharsets.ISO_8859_1);
      if (code != 0) {
        throw new IllegalStateException(command + " ended with " + code + ": " + said);
      }
      return said;
    } finally {
      Files.delete(out);
    }
  }
}

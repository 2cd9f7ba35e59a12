package org.thumbseal.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Other programs that have a device open, as Linux shows them under {@code /proc} (proc(5)): each
 * open file of a process is a symbolic link. Those of other users are seen by root alone; what
 * cannot be seen, and every other system, has no answer.
 *
 * @param proc where the system shows its processes
 * @param self number of this one
 */
record OtherPrograms(Path proc, long self) {
  /** Those of this machine. */
  static OtherPrograms system() {
    return new OtherPrograms(Path.of("/proc"), ProcessHandle.current().pid());
  }

  /** Those that have the device open, in words: {@code pid 123 (cat), pid 124 (screen)}. */
  Optional<String> having(Path device) {
    List<String> all = new ArrayList<>();
    try (DirectoryStream<Path> processes = Files.newDirectoryStream(proc, "[0-9]*")) {
      Path real = device.toRealPath();
      for (Path process : processes) {
        if (!process.endsWith(Long.toString(self)) && has(process, real)) {
          all.add("pid " + process.getFileName() + name(process));
        }
      }
    } catch (IOException | RuntimeException e) {
      // Nothing more is known then; an iteration that fails throws an exception without a check.
    }
    return all.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", all));
  }

  private static boolean has(Path process, Path device) {
    try (DirectoryStream<Path> open = Files.newDirectoryStream(process.resolve("fd"))) {
      for (Path file : open) {
        if (isLink(file, device)) {
          return true;
        }
      }
    } catch (IOException | RuntimeException e) {
      // It belongs to somebody else, or has just ended.
    }
    return false;
  }

  /** One that is closed while we look is none, and the others are looked at all the same. */
  private static boolean isLink(Path file, Path device) {
    try {
      return Files.readSymbolicLink(file).equals(device);
    } catch (IOException e) {
      return false;
    }
  }

  /** A process names itself, so it could be anything. */
  private static String name(Path process) {
    try {
      byte[] name = Files.readAllBytes(process.resolve("comm"));
      String text = new String(name, StandardCharsets.US_ASCII).strip();
      return " (" + text.replaceAll("[^\\p{Graph} ]", "?") + ")";
    } catch (IOException e) {
      return "";
    }
  }
}

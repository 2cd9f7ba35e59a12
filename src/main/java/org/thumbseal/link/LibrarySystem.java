package org.thumbseal.link;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Operating systems as the serial library tells them apart (read in the code of 2.11.4). */
final class LibrarySystem {
  private static final Map<String, String> FOLDERS =
      Map.of(
          "win", "Windows",
          "mac", "OSX",
          "sunos", "Solaris",
          "solaris", "Solaris",
          "freebsd", "FreeBSD",
          "openbsd", "OpenBSD",
          "nix", "Linux",
          "nux", "Linux");

  private LibrarySystem() {}

  /** The folder of the jar for a system of this name; without one the library ends the process. */
  static Optional<String> folder(String osName) {
    String name = osName.toLowerCase(Locale.ROOT);
    return FOLDERS.entrySet().stream()
        .filter(entry -> name.contains(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  /** What the library's file may be called here. */
  static Stream<String> fileNames(String folder) {
    String suffix =
        switch (folder) {
          case "Windows" -> "jSerialComm.dll";
          case "OSX" -> "libjSerialComm.jnilib";
          default -> "libjSerialComm.so";
        };
    return Stream.of(suffix, System.mapLibraryName("jSerialComm")).distinct();
  }
}

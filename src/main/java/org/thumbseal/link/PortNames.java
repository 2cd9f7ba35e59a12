package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Names of serial ports that stay when the plug is pulled and put in again: links that follow the
 * board, or the socket it is in. Linux makes them for ports on USB.
 */
final class PortNames {
  /** Folder of the links that follow the board, where it is not the usual one. */
  static final String BY_ID = "thumbseal.serial.by-id";

  /** Folder of the links that follow the socket. */
  static final String BY_PATH = "thumbseal.serial.by-path";

  private static final String USUAL_BY_ID = "/dev/serial/by-id";
  private static final String USUAL_BY_PATH = "/dev/serial/by-path";

  private final List<Path> byId;
  private final List<Path> byPath;

  private PortNames(List<Path> byId, List<Path> byPath) {
    this.byId = byId;
    this.byPath = byPath;
  }

  /** Those there are now. */
  static PortNames now() {
    return new PortNames(
        in(Path.of(System.getProperty(BY_ID, USUAL_BY_ID))),
        in(Path.of(System.getProperty(BY_PATH, USUAL_BY_PATH))));
  }

  /** What a folder holds, by name; nothing where there is none. */
  static List<Path> in(Path folder) {
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted().toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  /** The devices that have a name here. */
  List<Path> devices() {
    return Stream.concat(byId.stream(), byPath.stream())
        .flatMap(link -> device(link).stream())
        .distinct()
        .toList();
  }

  /**
   * The best name for each device, in the same order. Boards whose chip has no serial number share
   * one name by id, and the link leads to one of them only: as soon as one device on USB has none
   * to itself, all are called by their sockets.
   */
  List<Path> best(List<Path> devices) {
    boolean all = devices().stream().allMatch(device -> find(byId, device).isPresent());
    List<Path> best = new ArrayList<>();
    for (Path device : devices) {
      Optional<Path> id = all ? find(byId, device) : Optional.empty();
      best.add(id.or(() -> find(byPath, device)).orElse(device));
    }
    return best;
  }

  private static Optional<Path> find(List<Path> links, Path device) {
    return links.stream()
        .filter(link -> device(link).filter(device::equals).isPresent())
        .findFirst();
  }

  /** Where a link leads; empty where it leads to nothing. */
  private static Optional<Path> device(Path link) {
    try {
      return Optional.of(link.toRealPath());
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}

package org.thumbseal.daemon;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.thumbseal.record.ResultDocument;

/** The results of one capture, nearly always one, on their way to the disk. */
final class Unsaved {
  private final String port;
  private final byte[] capture;
  private final Optional<Path> open;
  private final boolean whole;
  private final Deque<ResultDocument> results;
  private boolean refused;

  /**
   * What one open capture gave.
   *
   * @param origin the port, and the file of the open capture, left as long as they wait
   * @param capture the bytes of the capture, which are not changed any more
   */
  Unsaved(Origin origin, List<ResultDocument> results, byte[] capture) {
    this.port = origin.port();
    this.open = origin.open();
    this.whole = origin.whole();
    this.results = new ArrayDeque<>(results);
    this.capture = capture;
  }

  /**
   * Where results come from.
   *
   * @param port address
   * @param open the open capture, if it was ever written
   * @param whole whether all of it is in that file
   */
  record Origin(String port, Optional<Path> open, boolean whole) {}

  String port() {
    return port;
  }

  byte[] capture() {
    return capture;
  }

  /** Those that are not stored yet, first to last. */
  Deque<ResultDocument> results() {
    return results;
  }

  /** Whether the disk has refused it at least once. */
  boolean refused() {
    return refused;
  }

  void refuse() {
    refused = true;
  }

  Optional<Path> open() {
    return open;
  }

  /** The open capture, if the next start can take the results from it. */
  Optional<Path> safeIn() {
    return open.filter(file -> whole);
  }
}

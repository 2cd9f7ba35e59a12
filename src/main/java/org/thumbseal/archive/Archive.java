package org.thumbseal.archive;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/**
 * A result directory open for writing. Results are added, never changed or removed. Each is sealed,
 * put at the end of its key's chain, and on the disk when {@link #store} returns: capture first,
 * then document, then head. Other processes may write to the same directory, each write at its
 * turn; within this process, one thread at a time.
 */
public final class Archive implements AutoCloseable {
  private final ResultDirectory directory;
  private final Sealer sealer;
  private final KeptHead kept;
  private final StoredMarks marks = new StoredMarks();
  private final List<String> notes = new ArrayList<>();
  private final @Nullable DaemonLock daemon;
  private Consumer<String> listener = note -> {};

  private Archive(ResultDirectory directory, Sealer sealer, @Nullable DaemonLock daemon) {
    this.directory = directory;
    this.sealer = sealer;
    this.daemon = daemon;
    this.kept = new KeptHead(directory, sealer, this::note);
    if (daemon != null && !daemon.note().isEmpty()) {
      note(daemon.note());
    }
  }

  /** As {@link #open(Path, Sealer)}, for a key that trusts no other. */
  public static Archive open(Path results, SigningKey key) throws ArchiveException {
    return open(results, Sealer.alone(key));
  }

  /**
   * Opens the directory, makes it when it is missing, and mends what an interrupted write left.
   *
   * @throws ArchiveException if it cannot be written, another process keeps it locked for longer
   *     than a write takes, or its head is damaged or by a key that is not trusted
   */
  public static Archive open(Path results, Sealer sealer) throws ArchiveException {
    try {
      Files.createDirectories(results);
      Archive archive = new Archive(new ResultDirectory(results), sealer, null);
      archive.bringIntoStep();
      return archive;
    } catch (IOException e) {
      throw ArchiveException.unusable(results, e);
    }
  }

  /**
   * As {@link #open(Path, Sealer)}, for a daemon: while this is open, no second daemon can open the
   * directory; commands that add single documents can.
   *
   * @throws ArchiveException also if a daemon has it already: which process, and since when
   */
  public static Archive openForDaemon(Path results, Sealer sealer) throws ArchiveException {
    try {
      Files.createDirectories(results);
      return opened(
          new ResultDirectory(results), sealer, DaemonLock.take(results, LockHolder.here()));
    } catch (IOException e) {
      throw ArchiveException.unusable(results, e);
    }
  }

  private static Archive opened(ResultDirectory directory, Sealer sealer, DaemonLock daemon)
      throws IOException, ArchiveException {
    try {
      Archive archive = new Archive(directory, sealer, daemon);
      archive.bringIntoStep();
      return archive;
    } catch (IOException | ArchiveException | RuntimeException e) {
      daemon.close();
      throw e;
    }
  }

  /** The result directory in which a document lies; empty where there is none around it. */
  public static Optional<Path> directoryOf(Path document) {
    return ResultDirectory.around(document).map(ResultDirectory::path);
  }

  /** What was mended so far, a line each; empty as a rule. */
  public List<String> notes() {
    return List.copyOf(notes);
  }

  /** Sends the notes on to here: those there are, and each that is made when storing. */
  public void tellNotes(Consumer<String> to) {
    notes.forEach(to);
    listener = to;
  }

  /** The directory, as it was opened. */
  public Path path() {
    return directory.path();
  }

  /** The captures that are under way in this directory. */
  public OpenCaptures openCaptures() {
    return new OpenCaptures(directory.path());
  }

  /**
   * The capture's file name without folder that {@link #store} would use, as it goes into {@code
   * evidence.capture}.
   *
   * @throws IllegalArgumentException if the document has no id
   */
  public static String captureName(ObjectNode document) {
    ResultName name = ResultName.of(document);
    return name.withIdDigits(Placement.FEWEST_ID_DIGITS) + ResultName.CAPTURE;
  }

  /** As {@link #store(ObjectNode, CaptureSource)}, with the capture in memory. */
  public StoredResult store(ObjectNode document, byte[] capture) throws ArchiveException {
    return store(document, () -> new ByteArrayInputStream(capture));
  }

  /** As {@link #store(ObjectNode, CaptureSource)}, with the capture in a file. */
  public StoredResult store(ObjectNode document, Path capture) throws ArchiveException {
    return store(document, () -> Files.newInputStream(capture));
  }

  /**
   * Seals the document and stores it with its capture. Sets {@code evidence.capture}, {@code
   * evidence.sha256}, {@code ledger} and {@code signature} in the copy that is stored. When a
   * result with this id is there already, that one is returned and nothing is written.
   *
   * @throws ArchiveException if it cannot be written; nothing half-done is left, and it may be
   *     tried again
   * @throws IllegalArgumentException if the document has no id or no canonical form, or names
   *     another digest than the capture has
   */
  public StoredResult store(ObjectNode document, CaptureSource capture) throws ArchiveException {
    return store(document, placement -> placement.write(capture));
  }

  /**
   * Seals and stores a document that was made from no capture. When one with this id is there
   * already, that one is returned and nothing is written.
   *
   * @throws ArchiveException if it cannot be written; nothing half-done is left
   * @throws IllegalArgumentException if the document has no id or no canonical form
   */
  public StoredResult store(ObjectNode document) throws ArchiveException {
    return store(document, Placement::write);
  }

  private StoredResult store(ObjectNode document, Beginning beginning) throws ArchiveException {
    Placement placement = new Placement(directory, marks, ResultName.of(document));
    requireSameDirectory();
    try (DirectoryLock lock = DirectoryLock.take(directory.path(), DirectoryLock.PATIENCE)) {
      bringIntoStep(lock);
      StoredResult there = placement.existing(document);
      return there != null ? there : add(document, beginning.of(placement), placement, lock);
    } catch (IOException e) {
      throw ArchiveException.of(directory.path(), e);
    }
  }

  /** A disk that was pulled leaves an empty folder, in which no other chain must begin. */
  private void requireSameDirectory() throws ArchiveException {
    if (!Files.isDirectory(directory.path())) {
      throw another(directory.path(), "has vanished");
    }
    if (daemon != null && !daemon.isHere()) {
      throw another(directory.path(), "is not the directory that was opened");
    }
    if (kept.head() != null && !directory.hasHead()) {
      throw another(directory.headFile(), "is gone");
    }
  }

  private static ArchiveException another(Path path, String what) {
    return new ArchiveException(path + ": " + what + "; put it back, or plug its disk in again");
  }

  /** Lets another daemon in, if this was opened for one. */
  @Override
  public void close() throws ArchiveException {
    try {
      if (daemon != null) {
        daemon.close();
      }
    } catch (IOException e) {
      throw ArchiveException.of(directory.path(), e);
    }
  }

  private void bringIntoStep() throws IOException, ArchiveException {
    try (DirectoryLock lock = DirectoryLock.take(directory.path(), DirectoryLock.PATIENCE)) {
      bringIntoStep(lock);
    }
  }

  private void bringIntoStep(DirectoryLock lock) throws IOException, ArchiveException {
    if (kept.bringIntoStep(lock)) {
      marks.forget();
    }
  }

  private StoredResult add(
      ObjectNode document, Write begun, Placement placement, DirectoryLock lock)
      throws IOException {
    try (Write write = begun) {
      ChainEnd end = end();
      ObjectNode sealed = Seal.seal(write.evidence(document), next(end), sealer.key());
      kept.begin(lock);
      Path file = write.finish(Canonical.text(sealed));
      kept.move(end.then(Seal.digest(sealed)), directory.relative(file));
      placement.written();
      kept.catchUp(lock);
      return new StoredResult(file, sealed, true);
    }
  }

  private ChainEnd end() {
    String kid = sealer.key().verifyingKey().kid();
    Head head = kept.head();
    return head == null ? ChainEnd.none(kid) : head.end(kid).orElse(ChainEnd.none(kid));
  }

  /** The first document of a new key is tied to the chain that was written before. */
  private LedgerPosition next(ChainEnd end) {
    Head head = kept.head();
    return head == null || end.sequence() > 0 ? end.next() : end.next().continuing(head.last());
  }

  private void note(String note) {
    notes.add(note);
    listener.accept(note);
  }

  /** Makes ready what a document needs beside it. */
  @FunctionalInterface
  private interface Beginning {
    Write of(Placement placement) throws IOException;
  }
}

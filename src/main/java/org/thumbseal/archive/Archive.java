package org.thumbseal.archive;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/**
 * A result directory open for writing by one process. Results are added, never changed or removed.
 * Each is sealed, put at the end of its key's chain, and on the disk when {@link #store} returns:
 * capture first, then document, then head. Not for several threads at once.
 */
public final class Archive implements AutoCloseable {
  private final ResultDirectory directory;
  private final SigningKey key;
  private final DirectoryLock lock;
  private final StoredMarks marks = new StoredMarks();
  private final List<String> notes;
  private @Nullable Head head;
  private boolean headIsBehind;

  private Archive(ResultDirectory directory, SigningKey key, DirectoryLock lock)
      throws IOException, ArchiveException {
    this.directory = directory;
    this.key = key;
    this.lock = lock;
    Recovery recovery = new Recovery(directory, key);
    this.notes = recovery.notes();
    recover(recovery);
  }

  /**
   * Opens the directory, makes it when it is missing, and mends what an interrupted write left.
   *
   * @throws ArchiveException if it cannot be written, another process writes to it, or its head is
   *     damaged
   */
  public static Archive open(Path results, SigningKey key) throws ArchiveException {
    try {
      Files.createDirectories(results);
      DirectoryLock lock = DirectoryLock.take(results);
      return openLocked(new ResultDirectory(results), key, lock);
    } catch (IOException e) {
      throw ArchiveException.unusable(results, e);
    }
  }

  /** What was mended at opening, a line each; empty as a rule. */
  public List<String> notes() {
    return List.copyOf(notes);
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
    Placement placement = new Placement(directory, marks, ResultName.of(document));
    try {
      catchUp();
      StoredResult there = placement.existing(document);
      return there != null ? there : add(document, placement.write(capture), placement);
    } catch (IOException e) {
      throw ArchiveException.of(directory.path(), e);
    }
  }

  /**
   * Seals and stores a document that was made from no capture. When one with this id is there
   * already, that one is returned and nothing is written.
   *
   * @throws ArchiveException if it cannot be written; nothing half-done is left
   * @throws IllegalArgumentException if the document has no id or no canonical form
   */
  public StoredResult store(ObjectNode document) throws ArchiveException {
    Placement placement = new Placement(directory, marks, ResultName.of(document));
    try {
      catchUp();
      StoredResult there = placement.existing(document);
      return there != null ? there : add(document, placement.write(), placement);
    } catch (IOException e) {
      throw ArchiveException.of(directory.path(), e);
    }
  }

  /** Lets another process write. */
  @Override
  public void close() throws ArchiveException {
    try {
      lock.close();
    } catch (IOException e) {
      throw ArchiveException.of(directory.path(), e);
    }
  }

  private static Archive openLocked(ResultDirectory directory, SigningKey key, DirectoryLock lock)
      throws IOException, ArchiveException {
    try {
      return new Archive(directory, key, lock);
    } catch (IOException | ArchiveException | RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  private void recover(Recovery recovery) throws IOException, ArchiveException {
    recovery.removeTemporaryFiles();
    Head read = recovery.readHead();
    head = read;
    if (recovery.needed(read, lock.writing())) {
      head = recovery.rollForward(read);
      headIsBehind = head != null && !head.equals(read);
      catchUp();
    }
  }

  private StoredResult add(ObjectNode document, Write begun, Placement placement)
      throws IOException {
    try (Write write = begun) {
      ChainEnd end = end();
      ObjectNode sealed = Seal.seal(write.evidence(document), end.next(), key);
      lock.begin();
      Path file = write.finish(Canonical.text(sealed));
      moveHead(end.then(Seal.digest(sealed)), directory.relative(file));
      placement.written();
      catchUp();
      return new StoredResult(file, sealed, true);
    }
  }

  private ChainEnd end() {
    String kid = key.verifyingKey().kid();
    return head == null ? ChainEnd.none(kid) : head.end(kid).orElse(ChainEnd.none(kid));
  }

  private void moveHead(ChainEnd end, String document) {
    head = head == null ? new Head(end, List.of(), document) : head.moved(end, document);
    headIsBehind = true;
  }

  /** Writes the head when the documents are ahead of it: after each one, and after a failure. */
  private void catchUp() throws IOException {
    if (headIsBehind && head != null) {
      Durable.forceFolder(directory.folderOf(head.document()));
      Path temporary = Durable.temporary(directory.headFile());
      Durable.write(temporary, Canonical.text(head.sealed(key)));
      Durable.rename(temporary, directory.headFile());
      Durable.forceFolder(directory.path());
      headIsBehind = false;
    }
    lock.end();
  }
}

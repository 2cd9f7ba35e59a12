package org.thumbseal.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.Sha256;

/**
 * The head of a result directory as this process left it. Others may have moved it since: so it is
 * brought into step at the beginning of each write, under the directory's lock.
 */
final class KeptHead {
  private static final String NO_FILE = "";
  private static final int LONGEST = 1 << 22;

  private final ResultDirectory directory;
  private final Sealer sealer;
  private final Consumer<String> notes;

  private @Nullable Head head;

  /** Digest of {@code head.json} as it was left; null while nothing is known. */
  private @Nullable String left;

  /** The documents are ahead of the file. */
  private boolean behind;

  /** The mark that we put into the lock file for a write of which we know how it ended. */
  private Optional<LockHolder> ours = Optional.empty();

  KeptHead(ResultDirectory directory, Sealer sealer, Consumer<String> notes) {
    this.directory = directory;
    this.sealer = sealer;
    this.notes = notes;
  }

  /** The head; null while nothing has been sealed here. */
  @Nullable Head head() {
    return head;
  }

  /**
   * Takes up what others did, mends what an interrupted write left, and writes the head if it could
   * not be written before.
   *
   * @return whether anything may have been added since
   */
  boolean bringIntoStep(DirectoryLock lock) throws IOException, ArchiveException {
    String now = digest();
    boolean foreign = !now.equals(left) || (lock.writing() && !lock.isMarkedBy(ours));
    if (foreign) {
      readAnew(lock, now);
    }
    catchUp(lock);
    return foreign;
  }

  private void readAnew(DirectoryLock lock, String now) throws IOException, ArchiveException {
    left = null;
    boolean interrupted = lock.writing();
    if (interrupted) {
      notes.accept(lock.note());
    }
    Recovery recovery = new Recovery(directory, sealer);
    try {
      recovery.removeTemporaryFiles();
      Head read = recovery.readHead();
      Head found =
          recovery.needed(read, interrupted) ? recovery.rollForward(read, interrupted) : read;
      requireNoLess(found);
      head = found;
      behind = head != null && !head.equals(read);
    } finally {
      recovery.notes().forEach(notes);
    }
    ours = interrupted ? lock.holder() : Optional.empty();
    left = now;
  }

  /** What was sealed here cannot have gone: then this is another directory, or an older copy. */
  private void requireNoLess(@Nullable Head found) throws ArchiveException {
    long known = head == null ? 0 : head.documents();
    if (found == null ? known > 0 : found.documents() < known) {
      throw new ArchiveException(
          directory.headFile()
              + " names fewer than the "
              + known
              + " documents sealed here; put the right directory back");
    }
  }

  /** A document is about to be written. */
  void begin(DirectoryLock lock) throws IOException {
    ours = Optional.of(lock.begin());
  }

  /** The document is there. */
  void move(ChainEnd end, String document) {
    head = head == null ? new Head(end, List.of(), document) : head.moved(end, document);
    behind = true;
  }

  /** Writes the head when the documents are ahead of it: after each one, and after a failure. */
  void catchUp(DirectoryLock lock) throws IOException {
    if (behind && head != null) {
      Durable.forceFolder(directory.folderOf(head.document()));
      String text = Canonical.text(head.sealed(sealer.key()));
      Durable.replace(directory.headFile(), text);
      left = Sha256.hex((text + "\n").getBytes(StandardCharsets.UTF_8));
      behind = false;
      Durable.forceFolder(directory.path());
    }
    lock.end();
    ours = Optional.empty();
  }

  private String digest() throws IOException {
    try (InputStream in = Files.newInputStream(directory.headFile())) {
      return Sha256.hex(in.readNBytes(LONGEST));
    } catch (NoSuchFileException e) {
      return NO_FILE;
    }
  }
}

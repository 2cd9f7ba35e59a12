package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * Brings a result directory back to where it can be written after an interruption, and says what it
 * did. It adds to the head what is provably sealed with the key and follows on; it changes nothing
 * else, and refuses a directory in which something is missing that it cannot account for.
 */
final class Recovery {
  private final ResultDirectory directory;
  private final SigningKey key;
  private final List<String> notes = new ArrayList<>();

  Recovery(ResultDirectory directory, SigningKey key) {
    this.directory = directory;
    this.key = key;
  }

  List<String> notes() {
    return notes;
  }

  void removeTemporaryFiles() throws IOException {
    for (Path file : directory.temporaryFiles()) {
      Files.delete(file);
      notes.add("removed the unfinished " + directory.relative(file));
    }
  }

  /** The head as it stands, with its seal checked; null when there is none. */
  @Nullable Head readHead() throws ArchiveException {
    if (!directory.hasHead()) {
      return null;
    }
    try {
      ObjectNode tree = directory.head();
      if (!new SealVerifier(TrustStore.of(key.verifyingKey())).check(tree).intact()) {
        throw damaged("its seal is broken");
      }
      return Head.read(tree).orElseThrow(() -> damaged("it is no head of a ledger"));
    } catch (JsonRefusedException e) {
      throw damaged(String.valueOf(e.getMessage()));
    }
  }

  /**
   * Whether documents may be there that the head does not know: a write was cut short, or their
   * number is not the one it names.
   */
  boolean needed(@Nullable Head head, boolean interrupted) throws IOException {
    long known = head == null ? 0 : head.documents();
    return interrupted || directory.countDocuments() != known;
  }

  /** The head moved on over every document of this key that follows on from it. */
  @Nullable Head rollForward(@Nullable Head head) throws IOException, ArchiveException {
    String kid = key.verifyingKey().kid();
    Optional<ChainEnd> known = head == null ? Optional.empty() : head.end(kid);
    List<Found> newer = newerThan(known.map(ChainEnd::sequence).orElse(0L));
    if (known.isEmpty() && newer.size() > 1) {
      throw new ArchiveException(
          directory.headFile()
              + " knows nothing of "
              + newer.size()
              + " sealed documents there; put the right head.json back, or use a new directory");
    }
    Head moved = head;
    for (Found found : newer) {
      moved = moved(moved, found);
    }
    return moved;
  }

  private Head moved(@Nullable Head head, Found found) throws ArchiveException {
    String kid = key.verifyingKey().kid();
    ChainEnd end =
        (head == null ? Optional.<ChainEnd>empty() : head.end(kid)).orElse(ChainEnd.none(kid));
    String path = directory.relative(found.file());
    if (!found.entry().position().isAt(end.next())) {
      throw new ArchiveException(
          found.file()
              + " does not follow document "
              + end.sequence()
              + "; run verify on "
              + directory.path());
    }
    notes.add("head.json now names " + path + ", which was stored before an interruption");
    ChainEnd next = end.then(found.entry().digest());
    return head == null ? new Head(next, List.of(), path) : head.moved(next, path);
  }

  private List<Found> newerThan(long sequence) throws IOException {
    List<Found> newer = new ArrayList<>();
    directory.forEachDocument(
        file -> find(file).filter(f -> f.sequence() > sequence).ifPresent(newer::add));
    newer.sort(Comparator.comparingLong(Found::sequence));
    return newer;
  }

  /** The entry of a document that this key has truly sealed. */
  private Optional<Found> find(Path file) {
    try {
      ObjectNode document = JsonGate.read(file);
      boolean ours =
          new SealVerifier(TrustStore.of(key.verifyingKey())).check(document).answer()
              == SealAnswer.TRUSTED_KEY;
      return ours ? LedgerEntry.read(document).map(e -> new Found(file, e)) : Optional.empty();
    } catch (JsonRefusedException e) {
      notes.add(directory.relative(file) + " " + e.getMessage() + "; left as it is");
      return Optional.empty();
    }
  }

  private ArchiveException damaged(String why) {
    return new ArchiveException(
        directory.headFile()
            + " is damaged: "
            + why
            + "; put a good copy back, or use a new directory");
  }

  private record Found(Path file, LedgerEntry entry) {
    long sequence() {
      return entry.position().sequence();
    }
  }
}

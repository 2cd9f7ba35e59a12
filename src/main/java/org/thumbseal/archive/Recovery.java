package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * Brings a result directory back to where it can be written after an interruption, and says what it
 * did. It adds to the head what is provably sealed and follows on; it changes nothing else, and
 * refuses a directory in which something is missing that it cannot account for.
 */
final class Recovery {
  private final ResultDirectory directory;
  private final Sealer sealer;
  private final List<String> notes = new ArrayList<>();

  Recovery(ResultDirectory directory, Sealer sealer) {
    this.directory = directory;
    this.sealer = sealer;
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

  /**
   * The head as it stands; null when there is none. One by a stranger may be there to hide that an
   * end was cut off, and the next document would vouch for it.
   */
  @Nullable Head readHead() throws ArchiveException {
    if (!directory.hasHead()) {
      return null;
    }
    try {
      ObjectNode tree = directory.head();
      SealCheck seal = new SealVerifier(TrustStore.of()).check(tree);
      if (!seal.intact()) {
        throw damaged("its seal is broken");
      }
      if (!sealer.trusts(tree)) {
        throw strange(seal.signer());
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

  /**
   * The head moved on over every document that follows on from it: of the keys that it knows, for
   * one may have been replaced while its last document was on the way, and of this key. Without a
   * head there can be one document, if a write was cut short.
   */
  @Nullable Head rollForward(@Nullable Head head, boolean interrupted)
      throws IOException, ArchiveException {
    Map<String, List<Found>> newer = newerThan(head);
    String own = sealer.key().verifyingKey().kid();
    List<Found> ours = newer.getOrDefault(own, List.of());
    newer.remove(own);
    Head moved = head;
    if (head == null && !newer.isEmpty()) {
      requireKnown(false, newer.values().stream().mapToInt(List::size).sum(), interrupted);
    }
    for (List<Found> theirs : newer.values()) {
      moved = movedAsFarAsTheyFollow(moved, theirs);
    }
    requireKnown(
        head != null && head.end(own).isPresent(), ours.size(), head != null || interrupted);
    for (Found found : ours) {
      if (!follows(moved, found)) {
        throw doesNotFollow(moved, found);
      }
      moved = moved(moved, found);
    }
    return moved;
  }

  /** A chain that the head does not know can only have its first document, just being stored. */
  private void requireKnown(boolean chain, int documents, boolean mayBegin)
      throws ArchiveException {
    if (!chain && documents > (mayBegin ? 1 : 0)) {
      throw new ArchiveException(
          directory.headFile()
              + " knows nothing of "
              + documents
              + " sealed documents there; put the right head.json back, or use a new directory");
    }
  }

  /** What is wrong with the chain of another key is no reason to seal nothing with this one. */
  private @Nullable Head movedAsFarAsTheyFollow(@Nullable Head head, List<Found> theirs) {
    Head moved = head;
    for (Found found : theirs) {
      if (!follows(moved, found)) {
        notes.add(directory.relative(found.file()) + " is not known to head.json; run verify");
        return moved;
      }
      moved = moved(moved, found);
    }
    return moved;
  }

  private static ChainEnd end(@Nullable Head head, String kid) {
    return head == null ? ChainEnd.none(kid) : head.end(kid).orElse(ChainEnd.none(kid));
  }

  private static boolean follows(@Nullable Head head, Found found) {
    return found.entry().position().isAt(end(head, found.entry().kid()).next());
  }

  private ArchiveException doesNotFollow(@Nullable Head head, Found found) {
    return new ArchiveException(
        found.file()
            + " does not follow document "
            + end(head, found.entry().kid()).sequence()
            + "; run verify on "
            + directory.path());
  }

  private Head moved(@Nullable Head head, Found found) {
    ChainEnd next = end(head, found.entry().kid()).then(found.entry().digest());
    String path = directory.relative(found.file());
    notes.add("head.json now names " + path + ", which was stored before an interruption");
    return head == null ? new Head(next, List.of(), path) : head.moved(next, path);
  }

  /** By key, in order. */
  private Map<String, List<Found>> newerThan(@Nullable Head head) throws IOException {
    List<Found> newer = new ArrayList<>();
    directory.forEachDocument(
        file -> find(file, head).filter(f -> f.isBeyond(head)).ifPresent(newer::add));
    newer.sort(Comparator.comparingLong(Found::sequence));
    return newer.stream()
        .collect(Collectors.groupingBy(f -> f.entry().kid(), TreeMap::new, Collectors.toList()));
  }

  /** The entry of a document that this key, or one that the head knows, has truly sealed. */
  private Optional<Found> find(Path file, @Nullable Head head) {
    try {
      ObjectNode document = JsonGate.read(file);
      return LedgerEntry.read(document)
          .filter(entry -> isKnown(entry.kid(), head) || (head == null && sealer.trusts(document)))
          .filter(entry -> new SealVerifier(TrustStore.of()).check(document).intact())
          .map(entry -> new Found(file, entry));
    } catch (JsonRefusedException e) {
      notes.add(directory.relative(file) + " " + e.getMessage() + "; left as it is");
      return Optional.empty();
    }
  }

  private boolean isKnown(String kid, @Nullable Head head) {
    return kid.equals(sealer.key().verifyingKey().kid())
        || (head != null && head.end(kid).isPresent());
  }

  private ArchiveException strange(String signer) {
    return new ArchiveException(
        directory.headFile()
            + " is sealed by an unknown key ("
            + signer
            + "); if you know whose it is, run key trust with its public key; else put the right"
            + " head.json back");
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

    boolean isBeyond(@Nullable Head head) {
      return sequence() > end(head, entry.kid()).sequence();
    }
  }
}

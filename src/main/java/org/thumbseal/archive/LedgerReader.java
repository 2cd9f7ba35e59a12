package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;

/**
 * Reads the documents of a results directory in the order in which they were sealed, while others
 * may be writing there. Where each chain ends is taken from {@code head.json}: what lies beyond,
 * and what a key sealed that it does not name, belongs to no chain of the directory.
 */
public final class LedgerReader {
  private static final SealVerifier SEALS = new SealVerifier(TrustStore.of());

  private final ResultDirectory directory;

  /** Of this directory. */
  public LedgerReader(Path results) {
    this.directory = new ResultDirectory(results);
  }

  /**
   * How far the chains have come.
   *
   * @param ends number of the last document of each key
   * @param last the document that was sealed last; absent before the first
   */
  public record Ends(Map<String, Long> ends, Optional<Path> last) {
    /** Keeps a copy of the map. */
    public Ends {
      ends = Map.copyOf(ends);
    }
  }

  /** Which places are asked for. */
  @FunctionalInterface
  public interface Wanted {
    /** Whether the document with this number of this key is. */
    boolean wants(String kid, long sequence);
  }

  /**
   * Reads the head.
   *
   * @throws ArchiveException if the directory is not there, or its head is damaged
   */
  public Ends ends() throws ArchiveException {
    if (!Files.isDirectory(directory.path())) {
      throw new ArchiveException(
          directory.path() + ": has vanished; put it back, or plug its disk in again");
    }
    if (!directory.hasHead()) {
      return new Ends(Map.of(), Optional.empty());
    }
    Head head = head();
    Map<String, Long> ends = new LinkedHashMap<>();
    for (ChainEnd end : HeadReading.ends(Optional.of(head)).values()) {
      ends.put(end.kid(), end.sequence());
    }
    return new Ends(ends, Optional.of(directory.path().resolve(head.document())));
  }

  private Head head() throws ArchiveException {
    try {
      var tree = directory.head();
      return Optional.of(tree)
          .filter(t -> SEALS.check(t).intact())
          .flatMap(Head::read)
          .orElseThrow(() -> new ArchiveException(damaged() + "its seal is broken"));
    } catch (JsonRefusedException e) {
      throw new ArchiveException(damaged() + e.getMessage());
    }
  }

  private String damaged() {
    return directory.headFile() + " is damaged: ";
  }

  /** The place that a document claims; empty where it claims none. */
  public static Optional<Sequenced> place(Path file) {
    try {
      return LedgerEntry.place(
          JsonGate.read(file), (kid, place) -> new Sequenced(kid, place.sequence(), file));
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }

  /**
   * Looks through the whole directory.
   *
   * @param wanted tells what to take
   * @param most how many of each key: those with the lowest numbers
   * @param breather is run after each file, for a reader that leaves the machine to others
   * @return in the order of each chain
   * @throws ArchiveException if the directory cannot be read
   */
  public List<Sequenced> find(Wanted wanted, int most, Runnable breather) throws ArchiveException {
    LedgerSearch search = new LedgerSearch(wanted, most);
    look(search, Comparator.naturalOrder(), () -> false, breather);
    return search.found();
  }

  /**
   * Looks for a few that were sealed last: from the latest name on, which begins with an instant,
   * until it has all of them; where they lie elsewhere, through the whole directory.
   *
   * @param wanted tells what to take
   * @param all how many it must be
   * @param breather is run after each file
   * @return in the order of each chain
   * @throws ArchiveException if the directory cannot be read
   */
  public List<Sequenced> findLatest(Wanted wanted, int all, Runnable breather)
      throws ArchiveException {
    LedgerSearch search = new LedgerSearch(wanted, all);
    look(search, Comparator.reverseOrder(), () -> search.holds(all), breather);
    return search.found();
  }

  private void look(
      LedgerSearch search, Comparator<String> order, BooleanSupplier enough, Runnable breather)
      throws ArchiveException {
    try {
      Comparator<Path> alike = Comparator.comparing(Path::toString, order);
      for (Path folder : directory.folders().stream().sorted(alike).toList()) {
        for (String name : directory.read(folder).documents().stream().sorted(order).toList()) {
          place(folder.resolve(name)).ifPresent(search::offer);
          breather.run();
          if (enough.getAsBoolean()) {
            return;
          }
        }
      }
    } catch (IOException e) {
      throw new ArchiveException(directory.path() + ": " + ArchiveException.reading(e));
    }
  }
}

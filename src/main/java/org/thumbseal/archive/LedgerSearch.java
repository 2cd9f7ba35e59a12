package org.thumbseal.archive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;

/** What a look through a directory has found so far: of each key those with the lowest numbers. */
final class LedgerSearch {
  private static final SealVerifier SEALS = new SealVerifier(TrustStore.of());

  private final Map<String, NavigableMap<Long, Sequenced>> found = new HashMap<>();
  private final LedgerReader.Wanted wanted;
  private final int most;
  private int count;
  private boolean changed;

  LedgerSearch(LedgerReader.Wanted wanted, int most) {
    this.wanted = wanted;
    this.most = most;
  }

  /** Of two files that claim one place, that with an intact seal has it. */
  void offer(Sequenced place) {
    if (!wanted.wants(place.kid(), place.sequence())) {
      return;
    }
    NavigableMap<Long, Sequenced> chain =
        found.computeIfAbsent(place.kid(), kid -> new TreeMap<>());
    Sequenced there = chain.get(place.sequence());
    if (there == null || (!isIntact(there) && isIntact(place))) {
      count += chain.put(place.sequence(), place) == null ? 1 : 0;
      changed = true;
    }
    if (chain.size() > most) {
      chain.pollLastEntry();
      count--;
    }
  }

  /** Whether it has so many, and no other file could have the place of one. */
  boolean holds(int all) {
    if (!changed || count != all) {
      return false;
    }
    changed = false;
    return found().stream().allMatch(LedgerSearch::isIntact);
  }

  private static boolean isIntact(Sequenced place) {
    try {
      return SEALS.check(JsonGate.read(place.file())).intact();
    } catch (JsonRefusedException e) {
      return false;
    }
  }

  /** In the order of each chain. */
  List<Sequenced> found() {
    List<Sequenced> all = new ArrayList<>();
    found.values().forEach(chain -> all.addAll(chain.values()));
    return all;
  }
}

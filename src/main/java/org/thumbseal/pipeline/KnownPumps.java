package org.thumbseal.pipeline;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** A list of pumps, as it was at one moment: it never changes. */
public interface KnownPumps {
  /** Nobody keeps one. */
  KnownPumps NONE =
      new KnownPumps() {
        @Override
        public Optional<KnownPump> of(String asset) {
          return Optional.empty();
        }

        @Override
        public List<KnownPump> all() {
          return List.of();
        }
      };

  /** The pump of an id; empty where it is not in the list. */
  Optional<KnownPump> of(String asset);

  /** All of them, in the order of the list. */
  List<KnownPump> all();

  /** Whether an id that should be in the list is not. */
  default boolean misses(String asset) {
    return !equals(NONE) && of(asset).isEmpty();
  }

  /**
   * The list as it is now; itself where nothing has changed.
   *
   * @param remark is told, in one line, that another is taken or why not
   */
  default KnownPumps now(Consumer<String> remark) {
    return this;
  }
}

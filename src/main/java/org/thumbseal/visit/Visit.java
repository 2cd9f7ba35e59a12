package org.thumbseal.visit;

import java.util.List;
import java.util.Optional;

/**
 * What was said about the pump on the bench.
 *
 * @param asset id of the pump, 1 to 100 plain characters; absent while nobody has said it
 * @param checks what was looked at, one for an item at most; empty where nothing was said
 */
public record Visit(Optional<String> asset, List<Check> checks) {
  /** Nothing said. */
  public static final Visit NONE = new Visit(Optional.empty(), List.of());

  /** Keeps a copy of the checks. */
  public Visit {
    checks = List.copyOf(checks);
  }

  /** The same for another pump. */
  public Visit withAsset(String id) {
    return new Visit(Optional.of(id), checks);
  }

  /** Whether the cord or plug was found damaged: the pump must not be switched on. */
  public boolean forbidsMains() {
    return checks.stream()
        .anyMatch(check -> check.item() == CheckItem.CORD && check.state() == CheckState.NOT_OK);
  }
}

package org.thumbseal.register;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The pumps of a site, read without a mistake.
 *
 * @param byId the pumps in the order of the file
 * @param otherColumns names of the columns that are only kept
 * @param warnings what is worth a look, sorted
 */
public record Register(
    Map<String, RegisteredAsset> byId, List<String> otherColumns, List<RegisterMistake> warnings) {
  /** Keeps the assets in their order. */
  public Register {
    byId = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(byId));
    otherColumns = List.copyOf(otherColumns);
    warnings = List.copyOf(warnings);
  }

  /** All pumps, in the order of the file. */
  public List<RegisteredAsset> assets() {
    return List.copyOf(byId.values());
  }

  /** The pump of an id; empty where the register has none. */
  public Optional<RegisteredAsset> of(String id) {
    return Optional.ofNullable(byId.get(id));
  }
}

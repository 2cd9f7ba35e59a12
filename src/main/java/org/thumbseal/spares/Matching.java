package org.thumbseal.spares;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Which part of the stock each use was of: the one of that name, else the only one for that item.
 */
final class Matching {
  private final List<StockLine> lines;
  private final Map<StockLine, List<Use>> uses = new LinkedHashMap<>();
  private final List<Use> unclear = new ArrayList<>();

  Matching(List<StockLine> lines, List<Use> all) {
    this.lines = lines;
    lines.forEach(line -> uses.put(line, new ArrayList<>()));
    all.forEach(this::take);
  }

  private void take(Use use) {
    line(use).ifPresentOrElse(line -> of(line).add(use), () -> unclear.add(use));
  }

  private Optional<StockLine> line(Use use) {
    Optional<StockLine> named =
        use.part()
            .flatMap(p -> lines.stream().filter(l -> name(l.part()).equals(name(p))).findFirst());
    return named.or(() -> only(use.item()));
  }

  /** Of two gaskets nobody knows which it was. */
  private Optional<StockLine> only(String item) {
    List<StockLine> fit = lines.stream().filter(l -> l.item().equals(item)).toList();
    return fit.size() == 1 ? Optional.of(fit.get(0)) : Optional.empty();
  }

  List<Use> of(StockLine line) {
    return uses.getOrDefault(line, List.of());
  }

  /** Uses of none of them, or of one of several. */
  List<Use> unclear() {
    return unclear;
  }

  /** A name however it was typed. */
  static String name(String part) {
    return part.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }
}

package org.thumbseal.register;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.thumbseal.register.RegisterMistake.Kind;

/** Gathers what is wrong, so that all of it is said at once. */
final class Mistakes {
  private final List<RegisterMistake> all = new ArrayList<>();

  /** About the file. */
  void add(Kind kind, String text) {
    all.add(new RegisterMistake(0, 0, "", kind, text));
  }

  /** About a row. */
  void add(int row, Kind kind, String text) {
    all.add(new RegisterMistake(row, 0, "", kind, text));
  }

  /** About a cell. */
  void add(Place place, Kind kind, String text) {
    all.add(new RegisterMistake(place.row(), place.column(), place.title(), kind, text));
  }

  /** Rows that something is wrong with already. */
  Set<Integer> rows() {
    return all.stream().map(RegisterMistake::row).collect(Collectors.toSet());
  }

  boolean isUsable() {
    return all.stream().allMatch(m -> m.kind().isWarning());
  }

  List<RegisterMistake> sorted() {
    return all.stream().sorted().toList();
  }
}

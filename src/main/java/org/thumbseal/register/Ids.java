package org.thumbseal.register;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.register.RegisterMistake.Kind;
import org.thumbseal.visit.BadScanException;
import org.thumbseal.visit.ScannedCode;

/** The ids of a register: each fit to be typed and scanned at the bench, and there once. */
final class Ids {
  private static final int LONGEST = 100;

  private final Mistakes mistakes;
  private final Map<String, Place> seen = new HashMap<>();
  private final Map<String, String> looks = new HashMap<>();

  Ids(Mistakes mistakes) {
    this.mistakes = mistakes;
  }

  /** The id of a row; one with a mistake is given all the same. */
  String of(RowCells cells) {
    Place place = cells.place(Column.ID);
    Optional<String> id = cells.strict(Column.ID);
    if (id.isPresent()) {
      check(place, id.get());
      once(place, id.get());
    } else if (mistakes.sorted().stream().noneMatch(m -> isAt(m, place))) {
      mistakes.add(place, Kind.EMPTY_ID, "the id is missing: every pump needs one");
    }
    return id.orElse("");
  }

  private static boolean isAt(RegisterMistake mistake, Place place) {
    return mistake.row() == place.row() && mistake.place() == place.column();
  }

  private void check(Place place, String id) {
    if (id.codePoints().anyMatch(Ids::isUnprintable)) {
      mistakes.add(
          place,
          Kind.UNPRINTABLE,
          RowCells.said(id) + " has characters that cannot be seen or typed");
    } else if (id.length() > LONGEST) {
      mistakes.add(place, Kind.TOO_LONG, "the id is longer than 100 characters");
    } else {
      scanned(place, id);
    }
  }

  /** Formats such as a zero-width joiner, and every space but the plain one. */
  private static boolean isUnprintable(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          true;
      case Character.SPACE_SEPARATOR -> c != ' ';
      default -> false;
    };
  }

  /** A scanner's GS1 code means the device in it alone; the register must have that. */
  private void scanned(Place place, String id) {
    try {
      String read = ScannedCode.of(id).asset();
      if (!read.equals(id)) {
        mistakes.add(
            place,
            Kind.ID_READ_OTHERWISE,
            RowCells.said(id) + " is read as " + RowCells.said(read) + " at the bench: write that");
      }
    } catch (BadScanException e) {
      mistakes.add(place, Kind.ID_READ_OTHERWISE, RowCells.said(id) + ": " + e.getMessage());
    }
  }

  private void once(Place place, String id) {
    Place before = seen.putIfAbsent(id, place);
    if (before != null) {
      String both = RowCells.said(id) + " is in row " + before.row() + " and in row " + place.row();
      mistakes.add(place, Kind.DUPLICATE_ID, both + ": an id names one pump");
      return;
    }
    String like = looks.putIfAbsent(Look.of(id), id);
    if (like != null) {
      Place other = seen.getOrDefault(like, place);
      mistakes.add(
          place,
          Kind.ALIKE_ID,
          RowCells.said(id)
              + " is easily taken for "
              + RowCells.said(like)
              + " in row "
              + other.row());
    }
  }
}

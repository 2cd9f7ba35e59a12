package org.thumbseal.register;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.json.CriteriaFile;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.register.RegisterMistake.Kind;
import org.thumbseal.register.RegisteredAsset.OwnCriteria;

/** The criteria files that a register names, each read once. */
final class CriteriaFiles {
  private final Path register;
  private final Map<String, Reading> read = new HashMap<>();

  /** What came of a file: criteria, or why not. */
  private record Reading(Optional<OwnCriteria> criteria, String refusal) {}

  /** Of this register; they lie in its folder, or from there. */
  CriteriaFiles(Path register) {
    this.register = register;
  }

  Optional<OwnCriteria> of(RowCells cells) {
    Optional<Reading> reading =
        cells.strict(Column.CRITERIA).map(name -> read.computeIfAbsent(name, this::read));
    reading
        .filter(r -> r.criteria().isEmpty())
        .ifPresent(r -> cells.no(Column.CRITERIA, Kind.CRITERIA_FILE, r.refusal()));
    return reading.flatMap(Reading::criteria);
  }

  private Reading read(String name) {
    try {
      var criteria = CriteriaFile.read(register.resolveSibling(name));
      return new Reading(Optional.of(new OwnCriteria(name, criteria)), "");
    } catch (JsonRefusedException | InvalidPathException e) {
      String why = e instanceof JsonRefusedException ? e.getMessage() : "no name of a file";
      return new Reading(Optional.empty(), "the criteria file " + RowCells.said(name) + ": " + why);
    }
  }
}

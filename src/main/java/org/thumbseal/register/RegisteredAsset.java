package org.thumbseal.register;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.grade.Criteria;
import org.thumbseal.pipeline.KnownPump;

/**
 * A pump as the register has it.
 *
 * @param row where, as a spreadsheet counts
 * @param label what people call it and where it is
 * @param equipment jar, 0.05 to 50 L, and rated flow, 0.1 to 1000 L/min
 * @param criteria limits of its own
 * @param inService first day of use
 * @param status whether it is in use
 * @param intervals how often what is done
 * @param others the text of the columns that the program has no use for, by their names, in order;
 *     what is empty is left out
 */
public record RegisteredAsset(
    int row,
    Label label,
    Criteria.Equipment equipment,
    Optional<OwnCriteria> criteria,
    Optional<LocalDate> inService,
    Status status,
    Intervals intervals,
    Map<String, String> others) {
  /** Keeps the others in their order. */
  public RegisteredAsset {
    others = Collections.unmodifiableMap(new LinkedHashMap<>(others));
  }

  /**
   * What people know it by.
   *
   * @param id 1 to 100 printable characters, its own in the register
   * @param description what it is
   * @param location where it is
   * @param serial number of its maker
   */
  public record Label(
      String id,
      Optional<String> description,
      Optional<String> location,
      Optional<String> serial) {}

  /**
   * Limits from a file.
   *
   * @param file as the register names it
   * @param criteria what stood in it when the register was read
   */
  public record OwnCriteria(String file, Criteria criteria) {}

  /**
   * Whole months from one time to the next, each 1 to 120.
   *
   * @param check the occlusion test
   * @param inspection by a qualified technician
   * @param sterilise jar and tubing
   */
  public record Intervals(int check, int inspection, int sterilise) {
    /** Common practice, no published source: monthly, yearly, monthly. */
    public static final Intervals USUAL = new Intervals(1, 12, 1);
  }

  /** The id of the pump. */
  public String id() {
    return label.id();
  }

  /** What grading and the page take from it. */
  KnownPump known() {
    return new KnownPump(
        label.id(),
        label.description(),
        label.location(),
        equipment,
        criteria.map(OwnCriteria::criteria));
  }
}

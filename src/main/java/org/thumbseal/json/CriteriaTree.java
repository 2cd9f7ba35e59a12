package org.thumbseal.json;

import org.thumbseal.grade.Criteria;
import tools.jackson.databind.node.ObjectNode;

/** Criteria as a file that {@link CriteriaFile} reads, every setting with its unit. */
public final class CriteriaTree {
  private static final int PLACES = 6;

  private CriteriaTree() {}

  /** All settings in force; what has no value is left out. */
  public static String text(Criteria criteria) {
    return Json.mapper().writerWithDefaultPrettyPrinter().writeValueAsString(of(criteria));
  }

  private static ObjectNode of(Criteria criteria) {
    ObjectNode tree = Json.object();
    tree.put("name", criteria.name());
    tree.put("rise", written(criteria.riseKilopascals(), "kPa"));
    tree.put("riseTimeLimit", written(criteria.riseSeconds(), "s"));
    tree.put("usualRiseTimeFrom", written(criteria.usualRiseFrom(), "s"));
    tree.put("maximumVacuumLimit", written(criteria.maximumKilopascals(), "kPa"));
    tree.put("openVacuumLimit", written(criteria.openKilopascals(), "kPa"));
    tree.put("altitudeRule", CriteriaFile.name(criteria.altitudeRule()));
    tree.put("decisionRule", CriteriaFile.name(criteria.decisionRule()));
    Criteria.Equipment equipment = criteria.equipment();
    equipment.jarLitres().ifPresent(v -> tree.put("jar", written(v, "L")));
    equipment.ratedLitresPerMinute().ifPresent(v -> tree.put("ratedSpeed", written(v, "L/min")));
    return tree;
  }

  private static String written(double value, String unit) {
    return Decimals.round(value, PLACES).toPlainString() + ' ' + unit;
  }
}

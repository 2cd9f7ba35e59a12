package org.thumbseal.json;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Criteria.AltitudeRule;
import org.thumbseal.grade.Criteria.Equipment;
import org.thumbseal.quantity.PressureUnit;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A criteria file: a JSON object in which every limit is a text with its unit, such as {@code
 * {"rise": "65 kPa", "riseTimeLimit": "10 s"}}. What is left out keeps its default; a name that is
 * not known is refused, so that a slip of the pen never leaves a default in force.
 */
public final class CriteriaFile {
  private static final Pattern WITH_UNIT =
      Pattern.compile(
          "([0-9]{1,6}(?:\\.[0-9]{1,6})?) ?([A-Za-z][A-Za-z0-9]{0,7}(?:/[A-Za-z]{1,4})?)");
  private static final Set<String> NAMES =
      Set.of(
          "name",
          "rise",
          "riseTimeLimit",
          "usualRiseTimeFrom",
          "maximumVacuumLimit",
          "openVacuumLimit",
          "altitudeRule",
          "decisionRule",
          "jar",
          "ratedSpeed");

  private final ObjectNode tree;

  private CriteriaFile(ObjectNode tree) {
    this.tree = tree;
  }

  /**
   * Reads a file.
   *
   * @throws JsonRefusedException with one line that says what is wrong in it
   */
  public static Criteria read(Path file) throws JsonRefusedException {
    return of(JsonGate.read(file));
  }

  /**
   * Reads an object.
   *
   * @throws JsonRefusedException with one line that says what is wrong in it
   */
  public static Criteria of(ObjectNode tree) throws JsonRefusedException {
    for (String name : tree.propertyNames()) {
      if (!NAMES.contains(name)) {
        throw new JsonRefusedException(
            "has no setting '" + Printable.line(name) + "'; the settings are " + known());
      }
    }
    return new CriteriaFile(tree).criteria();
  }

  /** The name of a rule in files and documents. */
  static String name(Enum<?> rule) {
    return rule.name().toLowerCase(Locale.ROOT);
  }

  private static String known() {
    return String.join(", ", new TreeSet<>(NAMES));
  }

  private Criteria criteria() throws JsonRefusedException {
    Criteria otherwise = Criteria.DEFAULT;
    try {
      return new Criteria(
          text("name", "site"),
          kilopascals("rise", otherwise.riseKilopascals()),
          seconds("riseTimeLimit", otherwise.riseSeconds()),
          seconds("usualRiseTimeFrom", usualByDefault(otherwise)),
          kilopascals("maximumVacuumLimit", otherwise.maximumKilopascals()),
          kilopascals("openVacuumLimit", otherwise.openKilopascals()),
          rule("altitudeRule", otherwise.altitudeRule()),
          rule("decisionRule", otherwise.decisionRule()),
          new Equipment(litres(), litresPerMinute()));
    } catch (IllegalArgumentException e) {
      throw new JsonRefusedException(String.valueOf(e.getMessage()));
    }
  }

  /** Never above the limit that the file sets. */
  private double usualByDefault(Criteria otherwise) throws JsonRefusedException {
    return Math.min(otherwise.usualRiseFrom(), seconds("riseTimeLimit", otherwise.riseSeconds()));
  }

  private String text(String name, String otherwise) throws JsonRefusedException {
    JsonNode node = tree.path(name);
    if (node.isMissingNode()) {
      return otherwise;
    }
    if (!node.isString() || node.stringValue().isBlank()) {
      throw new JsonRefusedException(
          name + " must be a text in quotes, such as \"" + otherwise + '"');
    }
    return node.stringValue();
  }

  private double kilopascals(String name, double otherwise) throws JsonRefusedException {
    Matcher value = value(name, otherwise + " kPa");
    PressureUnit unit =
        PressureUnit.ofSymbol(value.group(2))
            .orElseThrow(() -> notAUnit(name, value.group(2), "a pressure, such as kPa or mmHg"));
    return unit.toPascals(Double.parseDouble(value.group(1))) / 1_000;
  }

  private double seconds(String name, double otherwise) throws JsonRefusedException {
    Matcher value = value(name, otherwise + " s");
    double number = Double.parseDouble(value.group(1));
    return switch (value.group(2)) {
      case "s" -> number;
      case "ms" -> number / 1_000;
      case "min" -> number * 60;
      default -> throw notAUnit(name, value.group(2), "a time: s, ms or min");
    };
  }

  private Optional<Double> litres() throws JsonRefusedException {
    if (!tree.has("jar")) {
      return Optional.empty();
    }
    Matcher value = value("jar", "2 L");
    double number = Double.parseDouble(value.group(1));
    return switch (value.group(2)) {
      case "L" -> Optional.of(number);
      case "mL" -> Optional.of(number / 1_000);
      default -> throw notAUnit("jar", value.group(2), "a volume: L or mL");
    };
  }

  private Optional<Double> litresPerMinute() throws JsonRefusedException {
    if (!tree.has("ratedSpeed")) {
      return Optional.empty();
    }
    Matcher value = value("ratedSpeed", "30 L/min");
    double number = Double.parseDouble(value.group(1));
    return switch (value.group(2)) {
      case "L/min" -> Optional.of(number);
      case "m3/h" -> Optional.of(number * 1_000 / 60);
      default -> throw notAUnit("ratedSpeed", value.group(2), "a pumping speed: L/min or m3/h");
    };
  }

  private Matcher value(String name, String otherwise) throws JsonRefusedException {
    Matcher matcher = WITH_UNIT.matcher(text(name, otherwise));
    if (!matcher.matches()) {
      throw new JsonRefusedException(
          name + " must be a number with its unit in quotes, such as \"" + otherwise + '"');
    }
    return matcher;
  }

  private static JsonRefusedException notAUnit(String name, String unit, String expected) {
    return new JsonRefusedException(name + ": '" + unit + "' is not the unit of " + expected);
  }

  private <E extends Enum<E>> E rule(String name, E otherwise) throws JsonRefusedException {
    String wanted = text(name, name(otherwise));
    for (E rule : otherwise.getDeclaringClass().getEnumConstants()) {
      if (name(rule).equals(wanted)) {
        return rule;
      }
    }
    boolean altitude = otherwise instanceof AltitudeRule;
    throw new JsonRefusedException(
        name + " must be " + (altitude ? "\"scale\" or \"strict\"" : "\"guarded\" or \"simple\""));
  }
}

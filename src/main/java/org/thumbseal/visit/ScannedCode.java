package org.thumbseal.visit;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.thumbseal.visit.BadScanException.Cause;

/**
 * The id of a pump, as it was typed or read from its label by a scanner.
 *
 * <p>A GS1 code names a device by its GTIN and serial number, or by a GIAI; the id is these alone,
 * in brackets: {@code (01)51022222233336(21)1234}. Dates and lot are left out.
 *
 * @param asset 1 to 100 plain characters
 * @param from what it was taken from
 */
public record ScannedCode(String asset, From from) {
  private static final int LONGEST = 100;
  private static final Pattern SYMBOLOGY = Pattern.compile("\\][A-Za-z][0-9].*", Pattern.DOTALL);
  private static final Pattern PLAIN =
      Pattern.compile("[\\p{L}\\p{M}\\p{N}\\p{P}\\p{S}\\p{Zs}\\p{Cf}]+");
  private static final String GTIN = "01";
  private static final String SERIAL = "21";
  private static final String GIAI = "8004";

  /** What an id was taken from. */
  public enum From {
    PLAIN,
    GS1;

    /** Its word, for programs. */
    public String code() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * Reads what was typed or scanned.
   *
   * @throws BadScanException if it is no id, or a GS1 code that was read wrong or names no device
   */
  public static ScannedCode of(String text) throws BadScanException {
    String code = withoutLineEnd(text);
    Optional<Map<String, String>> elements = Gs1Elements.of(code);
    return elements.isPresent()
        ? new ScannedCode(device(elements.get()), From.GS1)
        : new ScannedCode(plain(withoutSymbology(code)), From.PLAIN);
  }

  /** What a scanner adds at the end; a separator of GS1 would count as a blank for strip. */
  private static String withoutLineEnd(String text) {
    return text.replaceAll("^[ \\t\\r\\n]+|[ \\t\\r\\n]+$", "");
  }

  /** Three characters by ISO/IEC 15424 (from memory) that say which kind of bar code it was. */
  private static String withoutSymbology(String code) {
    return SYMBOLOGY.matcher(code).matches() ? code.substring(3) : code;
  }

  private static String plain(String code) throws BadScanException {
    String id = code.strip();
    if (id.length() > LONGEST || !PLAIN.matcher(id).matches()) {
      throw new BadScanException(
          Cause.BAD_ASSET, "the id of a pump must be 1 to 100 plain characters");
    }
    return id;
  }

  private static String device(Map<String, String> elements) throws BadScanException {
    if (elements.containsKey(GTIN) && elements.containsKey(SERIAL)) {
      return bracketed(elements, GTIN) + bracketed(elements, SERIAL);
    } else if (elements.containsKey(GIAI)) {
      return bracketed(elements, GIAI);
    } else if (elements.containsKey(GTIN)) {
      throw new BadScanException(
          Cause.NO_SERIAL,
          "this code names a kind of device, not one: it has no serial number (21); scan another"
              + " label, or type the id");
    }
    throw new BadScanException(
        Cause.BAD_CODE,
        "this code names no device: it has neither (01) with (21), nor (8004); scan another label,"
            + " or type the id");
  }

  private static String bracketed(Map<String, String> elements, String identifier) {
    return "(" + identifier + ")" + elements.get(identifier);
  }
}

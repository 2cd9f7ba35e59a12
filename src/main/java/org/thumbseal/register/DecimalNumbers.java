package org.thumbseal.register;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Printable;
import org.thumbseal.register.RegisterMistake.Kind;

/**
 * Numbers as spreadsheets of different locales write them. Where the cells are separated by commas
 * the decimal sign is a point; elsewhere a comma or a point, but one of them in the whole file.
 */
final class DecimalNumbers {
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,9}(?:([.,])[0-9]{1,9})?");

  /** Space, no-break spaces, apostrophes, or the other sign, before every three digits. */
  private static final Pattern GROUPED =
      Pattern.compile("[0-9]{1,3}(?:[ \\u00A0\\u2009\\u202F'\\u2019.,_][0-9]{3})+(?:[.,][0-9]+)?");

  private final Separator separator;
  private final Mistakes mistakes;
  private @Nullable String sign;

  DecimalNumbers(Separator separator, Mistakes mistakes) {
    this.separator = separator;
    this.mistakes = mistakes;
    this.sign = separator == Separator.COMMA ? "." : null;
  }

  /** The number; empty, and a mistake, where it is none. */
  OptionalDouble read(Place place, String text) {
    var number = NUMBER.matcher(text);
    if (GROUPED.matcher(text).matches() && !isPlainDecimal(text)) {
      return no(place, Kind.THOUSANDS, said(text) + thousands(text));
    } else if (!number.matches()) {
      return no(place, Kind.NOT_A_NUMBER, said(text) + notANumber(text));
    }
    Optional<String> wrong = Optional.ofNullable(number.group(1)).flatMap(this::wrongSign);
    return wrong.isPresent()
        ? no(place, Kind.DECIMAL_SIGN, said(text) + wrong.get())
        : OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
  }

  /** 1.500 can be one and a half or fifteen hundred, unless the point can be only the former. */
  private boolean isPlainDecimal(String text) {
    return (separator == Separator.COMMA && text.matches("[0-9]{1,3}\\.[0-9]{3}"))
        || text.matches("0[.,][0-9]{3}");
  }

  private static String thousands(String text) {
    return text.matches("[0-9]{1,3}[.,][0-9]{3}")
        ? " can be read in two ways: leave out a sign between thousands, or the last zero of a"
            + " fraction"
        : " has a sign between thousands: leave it out";
  }

  private static String notANumber(String text) {
    return text.matches("[0-9.,]+ *[A-Za-z/]+")
        ? " has more than the number: the unit is in the name of the column, leave it out here"
        : " is not a number";
  }

  private Optional<String> wrongSign(String used) {
    if (sign == null) {
      sign = used;
    }
    if (used.equals(sign)) {
      return Optional.empty();
    }
    return Optional.of(
        separator == Separator.COMMA
            ? " has a decimal comma, but commas separate the cells here: write a point"
            : " has a decimal '" + used + "', numbers above have '" + sign + "': use one of them");
  }

  private OptionalDouble no(Place place, Kind kind, String text) {
    mistakes.add(place, kind, text);
    return OptionalDouble.empty();
  }

  private static String said(String text) {
    return "'" + Printable.line(text) + "'";
  }
}

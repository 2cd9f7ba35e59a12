package org.thumbseal.cli;

import java.util.function.Function;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads numbers as people write them: no hexadecimal, no type letters, a decimal point. */
final class NumberConverters {
  private static final Pattern DECIMAL = Pattern.compile("[+-]?\\d{1,15}(\\.\\d{1,15})?");

  private NumberConverters() {}

  static void register(CommandLine line) {
    line.registerConverter(Double.class, NumberConverters::decimal);
    line.registerConverter(long.class, whole(Long::valueOf));
    line.registerConverter(int.class, whole(Integer::valueOf));
  }

  private static Double decimal(String text) {
    if (!DECIMAL.matcher(text).matches()) {
      throw refused(text, "is not a number as in 101.3");
    }
    return Double.valueOf(text);
  }

  private static <N> ITypeConverter<N> whole(Function<String, N> reading) {
    return text -> {
      try {
        return reading.apply(text);
      } catch (NumberFormatException e) {
        throw refused(text, "is not a whole number, or far too large");
      }
    };
  }

  private static TypeConversionException refused(String text, String why) {
    return new TypeConversionException("'" + text + "' " + why);
  }
}

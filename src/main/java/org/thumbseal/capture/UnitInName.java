package org.thumbseal.capture;

import java.util.Optional;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds a unit in the name of a column: {@code Pressure [kPa]}, {@code t (ms)}, {@code p_bar}. */
final class UnitInName {
  private static final Pattern BRACKETED = Pattern.compile("[\\[(]([^\\])]*)[\\])]");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");

  private UnitInName() {}

  /** The first unit in brackets, else the last word. */
  static <U> Optional<U> find(String name, Function<String, Optional<U>> lookup) {
    Stream<String> last = words(name).reduce((before, after) -> after).stream();
    return Stream.concat(bracketed(name), last).map(lookup).flatMap(Optional::stream).findFirst();
  }

  private static Stream<String> bracketed(String name) {
    return BRACKETED.matcher(name).results().map(MatchResult::group).flatMap(UnitInName::words);
  }

  private static Stream<String> words(String text) {
    return BETWEEN_WORDS.splitAsStream(text).filter(word -> !word.isEmpty());
  }
}

package org.thumbseal.visit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A visit in the header of a capture, so that a replay knows what was said: {@code asset <id>}, and
 * for each item {@code check-<item> <state>}, followed by {@code ; part: <words>} and {@code ;
 * reason: <words>} where there are such. In the words a semicolon is {@code %3B} and a per cent
 * sign {@code %25}. What is not of this form is left out when it is read.
 */
public final class VisitFacts {
  private static final String ASSET = "asset";
  private static final String CHECK = "check-";
  private static final String PART = "part:";
  private static final String REASON = "reason:";

  private VisitFacts() {}

  /** The header lines of a visit, by key. */
  public static Map<String, String> of(Visit visit) {
    Map<String, String> facts = new LinkedHashMap<>();
    visit.asset().ifPresent(id -> facts.put(ASSET, id));
    visit.checks().forEach(check -> facts.put(CHECK + check.item().code(), text(check)));
    return facts;
  }

  /** What the header says of the items: all of them in order, or none where it is silent. */
  public static List<Check> checks(Map<String, String> facts) {
    List<Check> checks = new ArrayList<>();
    for (CheckItem item : CheckItem.values()) {
      Optional.ofNullable(facts.get(CHECK + item.code()))
          .flatMap(text -> check(item, text))
          .ifPresent(checks::add);
    }
    return checks.isEmpty() ? List.of() : whole(checks);
  }

  private static List<Check> whole(List<Check> said) {
    List<Check> all = new ArrayList<>();
    for (CheckItem item : CheckItem.values()) {
      all.add(
          said.stream()
              .filter(check -> check.item() == item)
              .findFirst()
              .orElse(Check.of(item, CheckState.NOT_CHECKED)));
    }
    return List.copyOf(all);
  }

  private static String text(Check check) {
    return check.state().code()
        + check.part().map(words -> "; " + PART + " " + escaped(words)).orElse("")
        + check.reason().map(words -> "; " + REASON + " " + escaped(words)).orElse("");
  }

  private static Optional<Check> check(CheckItem item, String text) {
    List<String> fields = List.of(text.split(";", -1));
    return CheckState.of(fields.get(0).strip().toLowerCase(Locale.ROOT))
        .map(state -> new Check(item, state, words(fields, PART), words(fields, REASON)));
  }

  private static Optional<String> words(List<String> fields, String name) {
    return fields.stream()
        .skip(1)
        .map(String::strip)
        .filter(field -> field.startsWith(name))
        .map(field -> plain(field.substring(name.length())))
        .findFirst();
  }

  private static String escaped(String words) {
    return words.replace("%", "%25").replace(";", "%3B");
  }

  private static String plain(String field) {
    return field.replace("%3B", ";").replace("%25", "%");
  }
}

package org.thumbseal.exchange;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.thumbseal.exchange.MappingTokens.Token;

/**
 * Reads a mapping file: the headings of somebody else's table, in order, and what goes under each.
 *
 * <pre>
 * set separator = ;
 * Number = asset_id
 * Date   = started_at "dd.MM.yyyy"
 * Result = verdict pass "in order" fail defective inconclusive repeat invalid repeat
 * Source = "Thumbseal"
 * </pre>
 */
public final class Mapping {
  private static final String SET = "set ";
  private static final Set<String> SETTINGS =
      Set.of("separator", "decimal", "zone", "byte-order-mark");

  /** In figures alone: names of months differ from place to place. */
  private static final Set<String> FIGURES =
      Set.of(
          "uuuu", "yyyy", "yy", "M", "MM", "d", "dd", "H", "HH", "m", "mm", "s", "ss", "SSS",
          "XXX");

  /** Letters of one kind are one field of a pattern. */
  private static final Pattern DATE_FIELD = Pattern.compile("([A-Za-z])\\1*");

  private final List<MappingMistake> mistakes = new ArrayList<>();
  private final List<Field> fields = new ArrayList<>();
  private final Set<String> headings = new HashSet<>();
  private final Map<String, String> settings = new HashMap<>();

  private Mapping() {}

  /**
   * Reads the lines of a file.
   *
   * @throws MappingRefused with everything that is wrong in it
   */
  public static Layout read(List<String> lines) throws MappingRefused {
    Mapping mapping = new Mapping();
    // The zone may be set below the date that it is for.
    mapping.each(lines, true);
    mapping.each(lines, false);
    return mapping.layout(lines.size());
  }

  private Layout layout(int lines) throws MappingRefused {
    if (fields.isEmpty() && mistakes.isEmpty()) {
      mistake(Math.max(1, lines), "no column is named; write a line 'their heading = our column'");
    }
    if (!mistakes.isEmpty()) {
      mistakes.sort(Comparator.comparingInt(MappingMistake::line));
      throw new MappingRefused(mistakes);
    }
    char separator = setting("separator", ",").charAt(0);
    return new Layout(
        fields,
        new Layout.Style(
            separator,
            setting("decimal", ".").charAt(0),
            setting("byte-order-mark", "no").equals("yes")));
  }

  private void each(List<String> lines, boolean settingsOnly) {
    for (int i = 0; i < lines.size(); i++) {
      String line = i == 0 ? lines.get(i).replaceFirst("^\uFEFF", "") : lines.get(i);
      if (!line.isBlank() && !line.stripLeading().startsWith("#")) {
        boolean setting = line.stripLeading().startsWith(SET) && !settingName(line).isEmpty();
        if (setting == settingsOnly) {
          read(i + 1, line, setting);
        }
      }
    }
  }

  /** A heading may begin with the same word; it has no name of a setting after it, or quotes. */
  private static String settingName(String line) {
    int equals = line.indexOf('=');
    return equals < 0 ? "" : line.substring(0, equals).strip().substring(SET.length() - 1).strip();
  }

  private void read(int line, String text, boolean setting) {
    Optional<MappingTokens> tokens = MappingTokens.of(text);
    if (tokens.isEmpty()) {
      mistake(line, "write 'their heading = our column', with a text of several words in quotes");
    } else if (setting) {
      set(line, settingName(text), tokens.get().words());
    } else {
      field(line, tokens.get());
    }
  }

  private void set(int line, String name, List<Token> words) {
    if (!SETTINGS.contains(name)) {
      mistake(
          line,
          "there is no setting '"
              + name
              + "'; there are separator, decimal, zone, byte-order-mark");
    } else if (words.size() != 1) {
      mistake(line, "say one thing after '" + name + " ='");
    } else if (settings.containsKey(name)) {
      mistake(line, name + " is set twice");
    } else {
      String value = value(name, words.get(0).text());
      settings.put(name, value);
      check(line, name, value);
    }
  }

  private static String value(String name, String text) {
    return name.equals("separator") && text.equals("tab") ? "\t" : text;
  }

  private void check(int line, String name, String value) {
    boolean good =
        switch (name) {
          case "separator" -> List.of(",", ";", "\t", "|").contains(value);
          case "decimal" -> List.of(".", ",").contains(value);
          case "byte-order-mark" -> List.of("yes", "no").contains(value);
          default -> zone(value).isPresent();
        };
    if (!good) {
      String choice =
          switch (name) {
            case "separator" -> "one of , ; | tab";
            case "decimal" -> "a full stop or a comma";
            case "byte-order-mark" -> "yes or no";
            default -> "a zone such as UTC or Europe/Berlin";
          };
      mistake(line, name + " is '" + value + "'; it has to be " + choice);
    }
  }

  private static Optional<ZoneId> zone(String text) {
    try {
      return Optional.of(ZoneId.of(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private void field(int line, MappingTokens tokens) {
    if (!headings.add(tokens.heading())) {
      mistake(line, "the heading '" + tokens.heading() + "' is there already");
    }
    List<Token> words = tokens.words();
    if (words.isEmpty()) {
      mistake(line, "say what goes under '" + tokens.heading() + "'; nothing at all is \"\"");
    } else if (words.get(0).quoted()) {
      constant(line, tokens.heading(), words);
    } else {
      taken(line, tokens.heading(), words);
    }
  }

  private void constant(int line, String heading, List<Token> words) {
    if (words.size() > 1) {
      mistake(line, "there is more after the text in quotes");
    }
    fields.add(new Field.Constant(heading, words.get(0).text()));
  }

  private void taken(int line, String heading, List<Token> words) {
    Optional<Column> column = Column.of(words.get(0).text());
    if (column.isEmpty()) {
      mistake(
          line,
          "there is no column '" + words.get(0).text() + "'; a text of your own is in quotes");
      return;
    }
    fields.add(new Field.Taken(heading, column.get(), form(line, column.get(), rest(words))));
  }

  private static List<Token> rest(List<Token> words) {
    return words.subList(1, words.size());
  }

  private Field.Form form(int line, Column column, List<Token> rest) {
    if (rest.isEmpty()) {
      return Field.Form.ASIS;
    }
    if (column.kind() == ColumnKind.INSTANT) {
      return date(line, rest);
    }
    if (column.words().isEmpty()) {
      mistake(line, "nothing can follow " + column.key());
      return Field.Form.ASIS;
    }
    return words(line, column, rest);
  }

  private Field.Form date(int line, List<Token> rest) {
    String pattern = rest.get(0).text();
    if (rest.size() > 1 || !isDate(pattern)) {
      mistake(
          line,
          "'"
              + pattern
              + "' is no form of a date; write it in figures, such as \"dd.MM.yyyy HH:mm\"");
      return Field.Form.ASIS;
    }
    ZoneId zone = zone(setting("zone", "UTC")).orElse(ZoneOffset.UTC);
    return new Field.Form(Optional.of(pattern), zone, Map.of());
  }

  private static boolean isDate(String pattern) {
    try {
      String fields = pattern.replaceAll("'[^']*'", "");
      boolean figures =
          DATE_FIELD.matcher(fields).results().allMatch(f -> FIGURES.contains(f.group()));
      return figures && !DateTimeFormatter.ofPattern(pattern, Locale.ROOT).toString().isEmpty();
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private Field.Form words(int line, Column column, List<Token> rest) {
    Map<String, String> words = new LinkedHashMap<>();
    for (int i = 0; i + 1 < rest.size(); i += 2) {
      words.put(rest.get(i).text(), rest.get(i + 1).text());
    }
    boolean whole = words.keySet().equals(Set.copyOf(column.words()));
    if (!whole || rest.size() != 2 * words.size()) {
      mistake(
          line,
          "say a word for each of "
              + String.join(", ", column.words())
              + ", such as: "
              + column.words().get(0)
              + " \"in order\"");
    } else if (isTakenForGood(column, words)) {
      mistake(
          line, "nothing else may have the word that stands for '" + column.words().get(0) + "'");
    }
    return new Field.Form(Optional.empty(), ZoneOffset.UTC, words);
  }

  /** A pump that failed must not be read as one that passed, nor a void test as one that counts. */
  private static boolean isTakenForGood(Column column, Map<String, String> words) {
    String good = words.getOrDefault(column.words().get(0), "").strip();
    return words.values().stream().filter(w -> w.strip().equalsIgnoreCase(good)).count() > 1;
  }

  private String setting(String name, String otherwise) {
    return settings.getOrDefault(name, otherwise);
  }

  private void mistake(int line, String text) {
    mistakes.add(new MappingMistake(line, text));
  }
}

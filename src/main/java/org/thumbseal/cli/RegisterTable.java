package org.thumbseal.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.thumbseal.json.Printable;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.register.RegisteredAsset.Intervals;
import org.thumbseal.register.RegisteredAsset.OwnCriteria;
import org.thumbseal.register.Status;

/** A register as an aligned table. */
final class RegisterTable {
  private static final List<String> TITLES =
      List.of(
          "id",
          "status",
          "jar_l",
          "rated_l_min",
          "criteria",
          "in_service",
          "months",
          "location",
          "description");

  private RegisterTable() {}

  /** The table, then what else was understood. */
  static List<String> lines(Register register) {
    List<List<String>> rows = new ArrayList<>(List.of(TITLES));
    register.assets().forEach(asset -> rows.add(row(asset)));
    int[] widths =
        IntStream.range(0, TITLES.size())
            .map(i -> rows.stream().mapToInt(r -> width(r.get(i))).max().orElse(0))
            .toArray();
    List<String> lines = new ArrayList<>(rows.stream().map(r -> line(r, widths)).toList());
    lines.add("");
    lines.add(count(register));
    lines.add("months: from check to check, inspection to inspection, sterilisation to the next");
    others(register).ifPresent(lines::add);
    return lines;
  }

  private static List<String> row(RegisteredAsset asset) {
    Intervals every = asset.intervals();
    return List.of(
        shown(Optional.of(asset.id())),
        asset.status().code(),
        number(asset.equipment().jarLitres()),
        number(asset.equipment().ratedLitresPerMinute()),
        shown(asset.criteria().map(OwnCriteria::file)),
        asset.inService().map(LocalDate::toString).orElse("-"),
        every.check() + "/" + every.inspection() + "/" + every.sterilise(),
        shown(asset.label().location()),
        shown(asset.label().description()));
  }

  private static String number(Optional<Double> value) {
    return value.map(v -> v.toString().replaceFirst("\\.0$", "")).orElse("-");
  }

  private static String shown(Optional<String> text) {
    return text.map(t -> Printable.line(t.replaceAll("\\s+", " ").strip())).orElse("-");
  }

  private static int width(String text) {
    return text.codePointCount(0, text.length());
  }

  private static String line(List<String> cells, int[] widths) {
    return IntStream.range(0, cells.size())
        .mapToObj(i -> cells.get(i) + " ".repeat(widths[i] - width(cells.get(i))))
        .collect(Collectors.joining("  "))
        .stripTrailing();
  }

  private static String count(Register register) {
    Map<Status, Long> each =
        register.assets().stream()
            .collect(Collectors.groupingBy(RegisteredAsset::status, Collectors.counting()));
    String parts =
        Arrays.stream(Status.values())
            .map(s -> each.getOrDefault(s, 0L) + " " + s.code())
            .collect(Collectors.joining(", "));
    int all = register.assets().size();
    return String.format(Locale.ROOT, "%d pump%s: %s", all, all == 1 ? "" : "s", parts);
  }

  private static Optional<String> others(Register register) {
    return register.otherColumns().isEmpty()
        ? Optional.empty()
        : Optional.of(
            Printable.line(
                "kept and not used by Thumbseal: " + String.join(", ", register.otherColumns())));
  }
}

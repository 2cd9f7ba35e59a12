package org.thumbseal.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.thumbseal.history.DrawnHistory;
import org.thumbseal.history.History;
import org.thumbseal.history.Outlook;

/** Writes drawn histories as pages, to be looked at: the argument is a folder. */
final class HistoryPictures {
  private static final String ELECTRIC = "electric suction pump, 2 L jar";

  private HistoryPictures() {}

  public static void main(String[] arguments) throws IOException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    write(folder, "wear", wear());
    write(folder, "repaired", repaired());
    write(folder, "jumped", jumped());
    write(folder, "few", new DrawnHistory(4).months(3, i -> 7).of("SP-044", ELECTRIC, "Theatre"));
    String fleet = FleetPage.html(fleet(), DrawnHistory.TODAY, ZoneOffset.UTC);
    Files.writeString(folder.resolve("fleet.html"), fleet);
    FleetPage.lines(fleet(), ZoneOffset.UTC).forEach(System.out::println);
    HistoryText.lines(wear(), ZoneOffset.UTC).forEach(System.out::println);
  }

  private static void write(Path folder, String name, History history) throws IOException {
    Files.writeString(folder.resolve(name + ".html"), HistoryPage.html(history, ZoneOffset.UTC));
  }

  static History wear() {
    return new DrawnHistory(1)
        .months(30, i -> i < 12 ? 7.1 : 7.1 + 0.12 * (i - 12))
        .voided(9, "hose of another pump")
        .invalid(14)
        .replaced(6, "gasket (gasket 60 mm)")
        .of("SP-014", ELECTRIC, "Maternity ward");
  }

  static History repaired() {
    return new DrawnHistory(2)
        .months(36, i -> i < 22 ? 7 + 0.17 * i : 7.2)
        .replaced(22, "filter (hydrophobic filter)", "tubing")
        .of("SP-022", ELECTRIC, "Children's ward");
  }

  static History jumped() {
    return new DrawnHistory(3)
        .months(24, i -> i < 19 ? 6.6 : 8.4)
        .of("SP-031", ELECTRIC, "Emergency");
  }

  /** Sixty, of all kinds. */
  static List<Outlook> fleet() {
    Random random = new Random(8);
    List<String> wards =
        List.of(
            "Maternity ward",
            "Children's ward",
            "Emergency",
            "Theatre",
            "Male ward",
            "Female ward");
    List<Outlook> all = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      double start = 5.5 + 2 * random.nextDouble();
      double wear = i % 6 == 0 ? 0.03 + 0.12 * random.nextDouble() : 0;
      double jump = i % 13 == 5 ? 1.6 : 0;
      int months = 8 + random.nextInt(28);
      DrawnHistory drawn =
          new DrawnHistory(i).months(months, m -> start + wear * m + (m > months - 5 ? jump : 0));
      if (i % 17 == 3) {
        drawn.without(2);
      }
      History history =
          drawn.of(String.format("SP-%03d", i + 1), ELECTRIC, wards.get(i % wards.size()));
      all.add(Outlook.of(history, DrawnHistory.dues(history)));
    }
    return Outlook.ordered(all);
  }
}

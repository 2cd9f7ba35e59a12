package org.thumbseal.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/** Writes referrals as pages, to be looked at: the argument is a folder that is not there yet. */
final class ReferralPictures {
  private ReferralPictures() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    Path key = folder.resolve("keys/k.pem");
    Path register = folder.resolve("pumps.csv");
    Files.writeString(
        register,
        """
        id,description,location,serial,in_service
        SP-014,"electric suction pump, 2 L jar",Maternity ward,55-1204,2022-05-01
        """);
    Path wide = folder.resolve("wide.csv");
    String words = "W".repeat(180);
    Files.writeString(
        wide,
        "id,description,location,serial,in_service\nSP-014,%s,%s,%s,2022-05-01\n"
            .formatted(words, words, words));
    for (String kind : List.of("life", "guide", "much", "few", "none", "wide")) {
      Path results = folder.resolve(kind);
      ReferredPump pump = new ReferredPump(results, key);
      switch (kind) {
        case "much", "wide" -> pump.tooMuch();
        case "few" -> pump.test("sound", "2026-03-02");
        case "none" -> pump.deed("repair", "2026-03-02", "");
        default -> pump.wholeLife();
      }
      if (Set.of("guide", "much", "wide").contains(kind)) {
        guide(results, key);
      }
      CommandRun run =
          CommandRun.of(
              "refer",
              ReferredPump.ASSET,
              "--complaint",
              complaint(kind),
              "--register",
              kind.equals("wide") ? wide : register,
              "--results",
              results,
              "--key",
              key,
              "-o",
              folder.resolve(kind + ".html"));
      System.out.println(run);
      System.out.println(
          CommandRun.of("refer", ReferredPump.ASSET, "--results", results, "--key", key).out());
    }
  }

  private static String complaint(String kind) {
    return switch (kind) {
      case "much" -> "Weak since Monday. ".repeat(15);
      case "wide" -> "W".repeat(300);
      default -> "weak since Monday, hisses";
    };
  }

  /** A long path through the trouble guide. */
  static void guide(Path results, Path key) {
    CommandRun.of(
        "trouble",
        ReferredPump.ASSET,
        "--by",
        "A. Nurse",
        "--answers",
        "yes,yes,yes,yes,yes,yes,no-suction,no,no,no,yes,no,yes",
        "--note",
        "hisses at the lid " + "and smells of warm rubber ".repeat(20),
        "--results",
        results,
        "--key",
        key);
  }
}

package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The pages about many tests and pumps as a browser prints them: nothing is cut or torn apart. */
@Timeout(180)
class PagesPrintTest {
  private static final Pattern TORN_DATE = Pattern.compile("20\\d\\d-(\\d\\d-)?(\\s|$)");

  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void aPumpWithAPast() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    new ReferredPump(results, key).wholeLife();
  }

  private PrintedPage printed(Object... command) throws Exception {
    Path page = folder.resolve(command[0] + ".html");
    List<Object> all = new ArrayList<>(Arrays.asList(command));
    all.addAll(List.of("--results", results, "--key", key, "--on", "2026-03-10", "-o", page));
    assertThat(CommandRun.of(all.toArray()).code()).isLessThan(ExitCode.USAGE);
    return PrintedPage.of(page);
  }

  @Test
  void historyAndFleetEndWithWhatTheyMustSay() throws Exception {
    PrintedPage history = printed("history", "SP-014");
    assertThat(history.sheets()).isLessThanOrEqualTo(3);
    assertThat(history.text())
        .contains("SP-014: tests so far", "Pumping speed", "8 mm, 1.5 m", "5.26 \u00b1 0.22 L/min")
        .contains("Evidence of suction on that day");
    PrintedPage fleet = printed("fleet");
    assertThat(fleet.sheets()).isEqualTo(1);
    assertThat(fleet.text())
        .contains("Why it stands here", "Failed its last test on 4 Mar 2026.")
        .contains("Evidence of suction on that day");
  }

  @Test
  void aRoundKeepsAPumpTogether() throws Exception {
    StringBuilder register = new StringBuilder("id,description,location,in_service\n");
    for (int i = 10; i < 40; i++) {
      register.append("SP-1").append(i).append(",electric suction pump,Theatre,2025-05-01\n");
    }
    Path pumps = Files.writeString(folder.resolve("pumps.csv"), register);
    PrintedPage round = printed("due", "--register", pumps);
    String text = round.text();
    assertThat(text.replaceAll("\\s+", " ")).contains("90 overdue", "of the hospital decide.");
    assertThat(TORN_DATE.matcher(text).find()).isFalse();
    for (String sheet : text.strip().split("\f", -1)) {
      long tests = Pattern.compile("Occlusion test").matcher(sheet).results().count();
      assertThat(Pattern.compile("SP-1\\d\\d").matcher(sheet).results().count()).isEqualTo(tests);
      assertThat(Pattern.compile("Sterilise jar").matcher(sheet).results().count())
          .isEqualTo(tests);
    }
  }

  @Test
  void anOrderListTearsNoDate() throws Exception {
    Path parts =
        Files.writeString(
            folder.resolve("parts.csv"),
            """
            part,item,quantity,counted_on,minimum,lead_days
            Gasket G-12 40 mm,gasket,3,2026-01-01,2,60
            Hydrophobic filter 26 mm,filter,1,2026-01-01,2,60
            Tube 8 mm 1.5 m,tubing,9,2026-01-01,2,60
            """);
    PrintedPage stock = printed("stock", "--stock", parts);
    assertThat(stock.sheets()).isEqualTo(1);
    assertThat(stock.text()).contains("Hydrophobic filter 26 mm", "The rules of the hospital");
    assertThat(TORN_DATE.matcher(stock.text()).find()).isFalse();
  }
}

package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.visit.CheckItem;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The command {@code stock} as it is typed, over really sealed documents of 2 March 2026. */
@Timeout(120)
class StockCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;
  private Path stock;

  @BeforeEach
  void places() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    stock = folder.resolve("parts.csv");
    SigningKey signing = KeyStore.create(key).key();
    try (Archive archive = Archive.open(results, signing)) {
      archive.store(replaced(1, "filter", "Filter <A>"), new byte[] {'#', '1'});
      archive.store(replaced(2, "filter", "some filter"), new byte[] {'#', '2'});
      archive.store(replaced(3, "gasket", "unheard of"), new byte[] {'#', '3'});
      archive.store(ExampleDocument.unsealed(4), new byte[] {'#', '4'});
    }
    stock("5,2026-03-01,2,21");
  }

  private void stock(String filter) throws Exception {
    Files.writeString(
        stock,
        "part,item,quantity,counted_on,minimum,lead_days,shelf\n"
            + "Filter <A>,filter,"
            + filter
            + ",A3\n"
            + "Gasket 1,gasket,50,2026-03-01,2,21,\n"
            + "Gasket 2,gasket,50,2026-03-01,2,21,\n");
  }

  private static ObjectNode replaced(int number, String item, String part) {
    ObjectNode document = ExampleDocument.unsealed(number);
    document.remove("checks");
    ArrayNode checks = document.putArray("checks");
    for (CheckItem each : CheckItem.values()) {
      boolean isIt = each.code().equals(item);
      ObjectNode check = checks.addObject().put("item", each.code());
      check.put("state", isIt ? "replaced" : "ok");
      if (isIt) {
        check.put("part", part);
      }
    }
    return document;
  }

  private CommandRun run(Object... args) {
    List<Object> all = new ArrayList<>(List.of("stock"));
    all.addAll(List.of(args));
    all.addAll(List.of("--stock", stock, "--results", results, "--key", key));
    return CommandRun.of(all.toArray());
  }

  @Test
  void countsTheSealedChecks() {
    CommandRun run = run("--on", "2026-03-31", "--json");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out()).hasLineCount(3);
    // Two in 30 days; interval of two, 0.2422 to 7.2247 (Garwood), over 30 days.
    assertThat(run.out().lines().findFirst().orElse(""))
        .contains("\"now\":3", "\"usedSinceCount\":2", "\"others\":{\"shelf\":\"A3\"}")
        .contains("\"usedPerMonth\":2.03", "\"usedPerMonthLow\":0.25", "\"usedPerMonthHigh\":7.33")
        .contains("\"state\":\"order-now\"");
    assertThat(run("--on", "2026-03-01", "--json").out())
        .contains("\"now\":5", "\"state\":\"use-unknown\"");
  }

  @Test
  void saysWhatToOrderAndWhatFitsNothing() {
    CommandRun table = run("--on", "2026-03-31");
    assertThat(table.out()).contains("Filter <A>", "order now", "1 gasket 'unheard of'");
    CommandRun order = run("--on", "2026-03-31", "--order");
    assertThat(order.out()).hasLineCount(1).contains(" x Filter <A>, by ", "3 left");
  }

  @Test
  void enoughIsExitCodeZero() throws Exception {
    stock("400,2026-03-01,2,21");
    assertThat(run("--on", "2026-03-31", "--order").out())
        .isEqualTo("Nothing is to be ordered today.\n");
    assertThat(run("--on", "2026-03-31").code()).isZero();
    stock("3,2026-03-01,2,21");
    assertThat(run("--on", "2026-03-31").out()).contains("Filter <A>: below the minimum");
  }

  @Test
  void writesAPageThatEscapes() throws Exception {
    Path page = folder.resolve("stock.html");
    CommandRun run = run("--on", "2026-03-31", "-o", page);
    assertThat(run.out()).isEmpty();
    assertThat(Files.readString(page))
        .contains("Spare parts on 2026-03-31", "Filter &lt;A&gt;", "<td class=\"by\">by 2026-03-")
        .doesNotContain("Filter <A>");
  }

  @Test
  void mistakesAreSaid() throws Exception {
    stock("5,2026-03-01,2,many");
    CommandRun run = run("--on", "2026-03-31");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).hasLineCount(2).contains("row 2, lead_days: 'many'", "1 mistake;");
    CommandRun none = CommandRun.of("stock");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("--stock FILE").hasLineCount(1);
    assertThat(CommandRun.of("stock", "--template").out()).startsWith("part,item,quantity");
  }
}

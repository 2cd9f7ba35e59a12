package org.thumbseal.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page about the tables names every one of them, and its SQL runs. */
class RecordsPageTest {
  private static final Path PAGE = Path.of("src/docs/records.md");

  @TempDir private Path folder;

  @Test
  void everyTableAndColumnIsNamed() throws Exception {
    List<String> lines = Files.readAllLines(PAGE);
    for (Table table : Table.all()) {
      String row =
          lines.stream()
              .filter(
                  l ->
                      l.startsWith("| `")
                          && l.split("\\|", -1)[1].contains("`" + table.sql() + "`"))
              .findFirst()
              .orElseThrow(() -> new AssertionError(table + " is not on the page"));
      assertThat(table.columns()).allMatch(column -> row.contains("`" + column + "`"), table.sql());
    }
  }

  @Test
  void theExamplesRun() throws Exception {
    Matcher block = Pattern.compile("(?s)```sql\n(.*?)```").matcher(Files.readString(PAGE));
    assertThat(block.find()).isTrue();
    RecordsAddress address = RecordsAddress.of(folder.resolve("r.sqlite"));
    Records.open(address, r -> {}).close();
    try (Session session = Base.open(address, Map.of())) {
      String sql = block.group(1).replaceAll("--[^\n]*", "");
      assertThat(sql.strip().split(";", 0)).hasSizeGreaterThan(2);
      for (String one : sql.strip().split(";", 0)) {
        assertThat(session.list(one, row -> row.getString(1))).isEmpty();
      }
    }
  }
}

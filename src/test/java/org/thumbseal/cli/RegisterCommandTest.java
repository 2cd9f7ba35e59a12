package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.JsonNode;

/** {@code register}, and {@code --register} where recorded tests are graded. */
class RegisterCommandTest {
  private static final Path PAGE = Path.of("src/docs/register.md");
  private static final Path CAPTURES = Path.of("fixtures", "captures");

  @TempDir private Path folder;

  private Path register(String text) throws IOException {
    return Files.writeString(folder.resolve("pumps.csv"), text);
  }

  @Test
  void whatWasUnderstoodIsATableOrAnObject() throws Exception {
    Path file = register(CommandRun.of("register", "--template").out() + "SP-O14,,,,,,,,,,,\n");

    CommandRun table = CommandRun.of("register", file);
    CommandRun json = CommandRun.of("register", file, "--json");

    assertThat(table.code()).isZero();
    assertThat(table.out().lines())
        .contains(
            "SP-021  away    0.5    18           -         2024-11-18  1/12/1  Theatre 1  suction pump, small")
        .contains("3 pumps: 2 in-use, 1 away, 0 retired");
    assertThat(table.err()).contains("look at row 4, id: 'SP-O14' is easily taken for 'SP-014'");
    JsonNode tree = JsonGate.read(json.out().getBytes(java.nio.charset.StandardCharsets.UTF_8));
    assertThat(tree.at("/assets/0/jar_l").asDouble()).isEqualTo(2);
    assertThat(tree.at("/assets/2").has("jar_l")).isFalse();
    assertThat(tree.at("/warnings/0/row").asInt()).isEqualTo(4);
  }

  @Test
  void allMistakesAreSaidAndNothingElse() throws Exception {
    Path file = register("id;jar_l\n A;2\nB;x\n");

    for (List<Object> command :
        List.<List<Object>>of(
            List.of("register", file),
            List.of("replay", CAPTURES.resolve("two-tests.log"), "--register", file),
            List.of("watch", "--port", "sim:sound", "--register", file))) {
      CommandRun run = CommandRun.of(command.toArray());

      assertThat(run.code()).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      assertThat(run.err().lines())
          .containsExactly(
              "thumbseal: " + file + ": row 2, id: ' A' has spaces around it: take them out",
              "thumbseal: " + file + ": row 3, jar_l: 'x' is not a number",
              "thumbseal: " + file + ": 2 mistakes; nothing of this register is used");
    }
  }

  @Test
  void oneFileOrTheTemplate() {
    assertThat(CommandRun.of("register").code()).isEqualTo(2);
    assertThat(CommandRun.of("register", "x.csv", "--template").code()).isEqualTo(2);
  }

  private static List<JsonNode> replay(Object... args) throws Exception {
    CommandRun run = CommandRun.of(args);
    List<JsonNode> results = new java.util.ArrayList<>();
    for (String line : run.out().lines().toList()) {
      results.add(JsonGate.read(line.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
    }
    return results;
  }

  @Test
  void replayTakesWhatTheRecordDoesNotSay() throws Exception {
    Files.writeString(folder.resolve("ward.json"), "{\"name\": \"ward\"}");
    Files.writeString(
        folder.resolve("mine.json"), "{\"name\": \"mine\", \"ratedSpeed\": \"7 L/min\"}");
    Path file = register("id,jar_l,rated_l_min,criteria\nDEMO-1,4,25,ward.json\n");
    Path capture = CAPTURES.resolve("two-tests.log");
    String bare = Files.readString(capture).replaceFirst("# jar-l 0.5\n", "");
    Path silent = Files.writeString(folder.resolve("silent.log"), bare);

    JsonNode said = replay("replay", "--json", capture, "--register", file).get(0);
    JsonNode unsaid = replay("replay", "--json", silent, "--register", file).get(0);
    JsonNode option = replay("replay", "--json", silent, "--register", file, "--jar-l", "1").get(0);
    JsonNode limits =
        replay(
                "replay",
                "--json",
                silent,
                "--register",
                file,
                "--criteria",
                folder.resolve("mine.json"))
            .get(0);

    assertThat(said.at("/test/jar/value").asDouble()).isEqualTo(0.5);
    assertThat(said.at("/criteria/name").asString()).isEqualTo("ward");
    assertThat(said.at("/criteria/ratedSpeed/value").asDouble()).isEqualTo(25);
    assertThat(unsaid.at("/test/jar/value").asDouble()).isEqualTo(4);
    assertThat(option.at("/test/jar/value").asDouble()).isEqualTo(1);
    assertThat(limits.at("/criteria/name").asString()).isEqualTo("mine");
    assertThat(limits.at("/criteria/ratedSpeed/value").asDouble()).isEqualTo(7);
    assertThat(limits.at("/test/jar/value").asDouble()).isEqualTo(4);
  }

  @Test
  void aPumpThatIsNotInItIsRemarkedOnce() throws Exception {
    Path file = register("id\nOTHER\n");

    CommandRun run = CommandRun.of("replay", CAPTURES.resolve("two-tests.log"), "--register", file);

    assertThat(run.err().lines())
        .containsExactly("thumbseal: DEMO-1 is not in the register; it is graded all the same");
  }

  /** The page cannot say something else than the program. */
  @Test
  void theExampleOfThePageIsARegister() throws Exception {
    String page = Files.readString(PAGE);
    var example = Pattern.compile("(?s)```csv\n(.*?)```").matcher(page);
    assertThat(example.find()).isTrue();

    CommandRun run = CommandRun.of("register", register(example.group(1)));

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    String header = CommandRun.of("register", "--template").out().lines().findFirst().orElseThrow();
    assertThat(header.split(",", -1)).allSatisfy(c -> assertThat(page).contains("| `" + c + "` |"));
  }
}

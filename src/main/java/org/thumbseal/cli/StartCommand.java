package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import org.thumbseal.page.PageClient;
import org.thumbseal.page.PageNote;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Says to a running watch that a test begins, on which pump, and what was looked at. */
@Command(
    name = "start",
    mixinStandardHelpOptions = true,
    description = {
      "Say to the running watch that a test begins, on which pump, and what was looked at.",
      "Items of --check: gasket, jar, tubing, filter, cord, overflow, outside; states: ok, not-ok,"
          + " replaced, not-checked."
    })
final class StartCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--port",
      paramLabel = "P",
      description = "which sensor, as watch was told it; needed where there are several")
  private @Nullable String port;

  @Option(names = "--asset", paramLabel = "ID", description = "id of the pump under test")
  private @Nullable String asset;

  @Option(
      names = "--check",
      paramLabel = "ITEM=STATE",
      description = "what was looked at and how it was found; repeatable")
  private Map<String, String> checks = new LinkedHashMap<>();

  @Option(
      names = "--results",
      paramLabel = "DIR",
      description = "the results of the watch to speak to; default: results")
  private Path results = Path.of("results");

  @Option(
      names = "--page",
      paramLabel = "URL",
      description = "the page of the watch to speak to, with its token where it has one")
  private @Nullable String page;

  @Override
  public Integer call() throws InterruptedException {
    PageNote note = note();
    try {
      return start(new PageClient(note));
    } catch (IllegalArgumentException e) {
      throw Failure.usage("--page: write the address that watch has shown, http://...");
    } catch (IOException e) {
      throw Failure.machine(
          "nobody answers at " + note.url() + "; is watch running? start it, then try again");
    }
  }

  private PageNote note() {
    String given = page;
    if (given != null) {
      return PageNote.ofLink(given);
    }
    return PageNote.read(results)
        .orElseThrow(
            () ->
                Failure.machine(
                    "no watch with a page is running on "
                        + results
                        + "; start one, or name its --results directory"));
  }

  private int start(PageClient client) throws IOException, InterruptedException {
    JsonNode at = port(good(client.bench()).path("ports"));
    String name = at.path("port").asString();
    ObjectNode request = Json.object().put("port", name).put("by", "command");
    if (asset != null || !checks.isEmpty()) {
      good(client.post("/do/visit", visit(at.path("visit")).put("port", name)));
    }
    good(client.post("/do/start", request));
    spec.commandLine()
        .getOut()
        .println(Printable.line(name + ": started; block the jar inlet within 90 s and hold"));
    return ExitCode.GOOD;
  }

  /** Of the same pump, what is said anew takes the place of what was said; the rest stands. */
  private ObjectNode visit(JsonNode before) {
    ObjectNode visit = Json.object();
    String pump = asset != null ? asset : before.path("asset").asString("");
    if (!pump.isEmpty() || asset != null) {
      visit.put("asset", pump);
    }
    ArrayNode all = visit.putArray("checks");
    for (JsonNode check : isAnother(before) ? Json.object() : before.path("checks")) {
      if (!checks.containsKey(check.path("item").asString())) {
        all.add(check);
      }
    }
    checks.forEach((item, state) -> all.addObject().put("item", item).put("state", state));
    return visit;
  }

  /** A pump that takes the place of another has not been looked at yet. */
  private boolean isAnother(JsonNode before) {
    String pump = before.path("asset").asString("");
    return asset != null && !pump.isEmpty() && !pump.equals(asset);
  }

  private JsonNode port(JsonNode ports) {
    List<String> names = new ArrayList<>();
    ports.forEach(each -> names.add(each.path("port").asString()));
    String wanted = port;
    if (wanted == null && names.size() > 1) {
      throw Failure.usage(
          "watch reads several ports; name one with --port: " + String.join(", ", names));
    }
    int place = wanted == null ? 0 : names.indexOf(wanted);
    if (place < 0 || names.isEmpty()) {
      throw Failure.usage(
          "watch does not read " + wanted + "; it reads " + String.join(", ", names));
    }
    return ports.get(place);
  }

  private static ObjectNode good(PageClient.Answer answer) {
    if (answer.isGood()) {
      return answer.body();
    }
    String code = answer.body().path("code").asString("");
    String text = answer.body().path("text").asString("the page answers with an error");
    throw switch (code) {
      case "test-running", "mains-forbidden" -> Failure.notPassed(text);
      case "unknown-port", "bad-asset", "bad-code", "no-serial", "bad-request", "forbidden" ->
          Failure.usage(text);
      default -> Failure.machine(text);
    };
  }
}

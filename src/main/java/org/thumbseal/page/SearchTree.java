package org.thumbseal.page;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.guided.GuidedSearch;
import org.thumbseal.guided.SealedSearch;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import org.thumbseal.seek.Conclusion;
import org.thumbseal.seek.Span;
import org.thumbseal.seek.SuctionPath;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A leak search as the page has it. Stations and sections are counted from 0 at the patient. */
final class SearchTree {
  private SearchTree() {}

  static ObjectNode of(PageSearch.Shown shown) {
    PageSearch.Progress progress = shown.progress();
    GuidedSearch guided = shown.guided();
    ObjectNode node = Json.object().put("asset", shown.said().asset());
    node.put("standing", progress.standing().name().toLowerCase(Locale.ROOT));
    node.put("step", progress.step()).put("tests", guided.state().tests().size());
    aim(node, progress.aim(), guided.state().path());
    ArrayNode lines = node.putArray("lines");
    shown.lines().forEach(lines::add);
    node.put("resumed", resumed(shown.said(), guided));
    progress
        .end()
        .answer()
        .ifPresent(answer -> node.set("answer", answer(answer, guided.state().path())));
    node.put("trouble", progress.end().trouble());
    return node;
  }

  private static void aim(ObjectNode node, PageSearch.Aim aim, SuctionPath path) {
    aim.station()
        .ifPresent(
            at -> {
              node.put("station", at).put("withJar", path.hasJar(at));
              named(path).ifPresent(own -> node.put("stationName", own.station(at)));
            });
    node.put("again", aim.again()).put("canGoBack", aim.canGoBack());
    node.put("running", aim.running());
  }

  /** One that has names of its own; the usual ones the page has in several languages. */
  private static Optional<SuctionPath> named(SuctionPath path) {
    return Optional.of(path).filter(p -> !p.equals(SuctionPath.USUAL));
  }

  private static ObjectNode answer(SealedSearch.Answer answer, SuctionPath path) {
    Conclusion found = answer.found();
    ObjectNode node = Json.object().put("code", found.verdict().code());
    section(found.leaking())
        .ifPresent(
            at -> {
              node.put("section", at);
              named(path).ifPresent(own -> node.put("sectionName", own.section(at)));
            });
    node.put("sentence", answer.sentence()).put("advice", answer.advice());
    return node.put("file", answer.stored().document().getFileName().toString());
  }

  private static Optional<Integer> section(List<Span> leaking) {
    return leaking.stream().findFirst().map(Span::from);
  }

  /** The command that goes on with what was tested; empty where nothing counts yet. */
  private static String resumed(SealedSearch.Said said, GuidedSearch guided) {
    String tests = guided.resumed();
    return tests.isEmpty()
        ? ""
        : "thumbseal seek-leak " + Printable.word(said.asset()) + tests + " --port P";
  }
}

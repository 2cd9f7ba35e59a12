package org.thumbseal.cli;

import java.util.Locale;
import java.util.Optional;
import org.thumbseal.history.Course;
import org.thumbseal.history.Days;
import org.thumbseal.history.History;
import org.thumbseal.history.Kind;
import org.thumbseal.history.PastTest;
import org.thumbseal.json.Json;
import org.thumbseal.trend.Step;
import org.thumbseal.trend.TrendLine;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A history for programs; what is not known is absent. */
final class HistoryJson {
  private HistoryJson() {}

  static ObjectNode of(History history) {
    ObjectNode tree = Json.object().put("asset", history.pump().id());
    put(tree, "description", history.pump().description());
    put(tree, "location", history.pump().location());
    tree.put("asOf", history.today().toString());
    ArrayNode courses = tree.putArray("courses");
    history.courses().forEach(course -> courses.add(course(course)));
    ArrayNode tests = tree.putArray("tests");
    history.tests().forEach(test -> tests.add(test(test)));
    return tree;
  }

  private static ObjectNode course(Course course) {
    Kind kind = course.kind();
    ObjectNode node = Json.object().put("quantity", kind.member()).put("unit", kind.unit());
    course.limit().ifPresent(limit -> node.put("limit", limit.value()));
    course.trend().line().ifPresent(line -> node.set("trend", line(line, course.worsens())));
    course.trend().silence().ifPresent(why -> node.put("noTrend", word(why)));
    ArrayNode steps = node.putArray("steps");
    course.trend().steps().forEach(step -> steps.add(step(step)));
    course
        .crossing()
        .ifPresent(
            c ->
                node.putObject("reachesLimit")
                    .put("earliest", day(c.earliest()))
                    .put("likeliest", day(c.likeliest())));
    return node;
  }

  private static String word(Enum<?> code) {
    return code.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Slopes per day; UTC days. */
  private static ObjectNode line(TrendLine line, boolean worsens) {
    return Json.object()
        .put("perDay", line.slope().value())
        .put("perDayLow", line.slope().low())
        .put("perDayHigh", line.slope().high())
        .put("worsens", worsens)
        .put("visits", line.base().tests())
        .put("since", day(line.base().from()))
        .put("chance", line.chance());
  }

  private static ObjectNode step(Step step) {
    return Json.object()
        .put("after", day(step.before()))
        .put("by", day(step.after()))
        .put("size", step.size())
        .put("replaced", step.known());
  }

  private static String day(double days) {
    return Days.instant(days).toString().substring(0, "2026-03-02".length());
  }

  private static ObjectNode test(PastTest test) {
    ObjectNode node = Json.object().put("id", test.id());
    test.at().ifPresent(at -> node.put("startedAt", at.toString()));
    node.put("verdict", test.outcome().verdict());
    put(node, "voided", test.outcome().voided());
    put(node, "note", test.outcome().note());
    node.put("corrected", test.outcome().corrected()).put("sensor", test.setting().sensor());
    ArrayNode replaced = node.putArray("replaced");
    test.setting().replaced().forEach(replaced::add);
    for (Kind kind : Kind.values()) {
      Optional.ofNullable(test.values().get(kind))
          .ifPresent(
              v ->
                  node.putObject(kind.member())
                      .put("value", v.value())
                      .put("unit", kind.unit())
                      .put("expandedUncertainty", v.expanded()));
    }
    return node;
  }

  private static void put(ObjectNode node, String name, Optional<String> text) {
    text.ifPresent(t -> node.put(name, t));
  }
}

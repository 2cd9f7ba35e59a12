package org.thumbseal.cli;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.json.Json;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.Referral.LastLook;
import org.thumbseal.refer.ReferredTest;
import org.thumbseal.refer.Source;
import org.thumbseal.refer.Untried;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A referral for programs; what is not known is absent. */
final class ReferralJson {
  private ReferralJson() {}

  static ObjectNode of(Referral referral) {
    ObjectNode tree = Json.object().put("asset", referral.subject().asset());
    tree.put("made", referral.subject().made().toString());
    referral.subject().complaint().ifPresent(text -> tree.put("complaint", text));
    ObjectNode register = tree.putObject("register");
    referral.subject().register().forEach(fact -> register.put(fact.name(), fact.value()));
    referral.infectiousSince().ifPresent(day -> tree.put("infectiousSince", day.toString()));
    List<ReferredTest> drawn = referral.drawn();
    ArrayNode tests = tree.putArray("tests");
    referral.tests().forEach(test -> tests.add(test(test, drawn.contains(test))));
    ArrayNode looks = tree.putArray("looks");
    referral.lastLooks().values().forEach(look -> looks.add(look(look)));
    ArrayNode replaced = tree.putArray("replaced");
    referral.replaced().forEach(look -> replaced.add(look(look)));
    ArrayNode deeds = tree.putArray("deeds");
    referral.deeds().forEach(deed -> deeds.add(deed(deed)));
    untried(tree.putObject("untried"), Untried.of(referral));
    return tree;
  }

  private static void untried(ObjectNode node, Untried untried) {
    untried.since().ifPresent(day -> node.put("since", day.toString()));
    add(node.putArray("unseen"), untried.unseen());
    add(node.putArray("unreplaced"), untried.unreplaced());
    add(
        node.putArray("steps"),
        untried.steps().stream()
            .map(step -> step.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .toList());
  }

  private static void add(ArrayNode array, List<String> texts) {
    texts.forEach(array::add);
  }

  private static ObjectNode test(ReferredTest test, boolean drawn) {
    ObjectNode node = Json.object();
    at(node, test.at());
    node.put("verdict", test.outcome().verdict());
    put(node, "voided", test.outcome().voided());
    put(node, "note", test.outcome().note());
    node.put("corrected", test.outcome().corrected()).put("drawn", drawn);
    ArrayNode findings = node.putArray("findings");
    test.seen()
        .findings()
        .forEach(f -> findings.addObject().put("code", f.code()).put("confidence", f.confidence()));
    test.values().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(each -> value(node.putObject(each.getKey()), each.getValue()));
    return source(node, test.source());
  }

  private static void value(ObjectNode node, ReferredTest.Value value) {
    node.put("value", value.value()).put("unit", value.unit());
    value.expanded().ifPresent(u -> node.put("expandedUncertainty", u));
    if (value.isBound()) {
      node.put("bound", "upper");
    }
  }

  private static ObjectNode look(LastLook look) {
    ObjectNode node = Json.object();
    at(node, look.at());
    node.put("item", look.looked().item()).put("state", look.looked().state());
    put(node, "part", look.looked().part());
    put(node, "reason", look.looked().reason());
    return node;
  }

  private static ObjectNode deed(Deed deed) {
    ObjectNode node = Json.object().put("work", deed.work()).put("on", deed.on().toString());
    put(node, "by", deed.by());
    deed.told().inOrder().ifPresent(fit -> node.put("inOrder", fit));
    add(node.putArray("told"), deed.told().lines());
    ArrayNode answers = node.putArray("answers");
    deed.told()
        .answers()
        .forEach(a -> answers.addObject().put("question", a.question()).put("answer", a.answer()));
    return source(node, deed.source());
  }

  private static ObjectNode source(ObjectNode node, Source source) {
    node.putObject("source")
        .put("file", source.file())
        .put("digest", source.digest())
        .put("kid", source.kid());
    return node;
  }

  private static void at(ObjectNode node, Optional<Instant> at) {
    at.ifPresent(instant -> node.put("startedAt", instant.toString()));
  }

  private static void put(ObjectNode node, String name, Optional<String> text) {
    text.ifPresent(t -> node.put(name, t));
  }
}

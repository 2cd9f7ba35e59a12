package org.thumbseal.json;

import java.util.List;
import java.util.stream.IntStream;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.Software;
import org.thumbseal.seek.Conclusion;
import org.thumbseal.seek.Intake;
import org.thumbseal.seek.LeakRules;
import org.thumbseal.seek.LeakSearch;
import org.thumbseal.seek.SearchState;
import org.thumbseal.seek.SearchWords;
import org.thumbseal.seek.SectionLeak;
import org.thumbseal.seek.Span;
import org.thumbseal.seek.Station;
import org.thumbseal.seek.StationTest;
import org.thumbseal.seek.SuctionPath;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A leak search as the tree that is written and sealed; what is missing is absent. */
public final class LeakSearchTree {
  private final LeakSearch.About about;
  private final SearchState state;
  private final Conclusion conclusion;

  private LeakSearchTree(LeakSearch.About about, SearchState state, Conclusion conclusion) {
    this.about = about;
    this.state = state;
    this.conclusion = conclusion;
  }

  /** Whether a document says that it is one of these, of whatever version. */
  public static boolean isLeakSearch(ObjectNode tree) {
    return tree.path("kind").asString("").equals(LeakSearch.KIND);
  }

  /** The document without ledger and signature. */
  public static ObjectNode of(LeakSearch search) {
    ObjectNode tree = said(search.about(), search.state(), search.conclusion());
    tree.put("id", search.id());
    tree.put("searchedAt", CalibrationTree.MILLIS.format(search.searchedAt()));
    tree.putObject("software").put("name", Software.NAME).put("version", Software.VERSION);
    return tree;
  }

  /**
   * All but the moment and the program: what the id is made of, so that the same tests taken twice
   * are one document.
   */
  public static ObjectNode said(LeakSearch.About about, SearchState state, Conclusion conclusion) {
    return new LeakSearchTree(about, state, conclusion).said();
  }

  private ObjectNode said() {
    ObjectNode tree = Json.object().put("schema", LeakSearch.SCHEMA).put("kind", LeakSearch.KIND);
    tree.putObject("asset").put("id", about.asset());
    about.by().ifPresent(by -> tree.put("by", by));
    about.jarLitres().ifPresent(v -> ResultTree.limit(tree, "jar", v, "L"));
    path(tree.putArray("path"));
    tests(tree.putArray("tests"));
    state.speed().ifPresent(q -> tree.set("pumpingSpeed", ResultTree.quantity(q)));
    ResultTree.limit(tree, "ambient", state.ambient(), "kPa");
    rules(tree.putObject("rules"));
    Intake.of(state).forEach(leak -> section(tree.withArray("sections").addObject(), leak));
    names(tree, "notLookedAt", state.notLookedAt());
    conclude(tree.putObject("conclusion"));
    return tree;
  }

  private void path(ArrayNode stations) {
    SuctionPath path = state.path();
    for (Station station : path.stations()) {
      stations.addObject().put("station", station.name()).put("inward", station.inward().name());
    }
    ((ObjectNode) stations.get(path.jarInlet())).put("jarInlet", true);
  }

  private void tests(ArrayNode tests) {
    for (StationTest test : state.tests()) {
      ObjectNode node = tests.addObject();
      node.put("station", state.path().station(test.station()));
      node.put("id", test.source().id()).put("digest", test.source().digest());
      node.put("file", test.source().file());
      node.set("maximumVacuum", ResultTree.quantity(test.vacuum().stated()));
      ResultTree.limit(node, "limit", test.vacuum().limit(), "kPa");
    }
  }

  private void rules(ObjectNode rules) {
    ResultTree.number(rules, "falseAlarm", LeakRules.FALSE_ALARM);
    rules.put("looks", LeakRules.looks(state.path().size()));
    ResultTree.number(rules, "factor", state.factor());
    ResultTree.limit(rules, "least", LeakRules.least(state.ambient()), "kPa");
    ResultTree.limit(rules, "repeatability", LeakRules.REPEATABILITY_KILOPASCALS, "kPa");
  }

  private void section(ObjectNode node, SectionLeak leak) {
    Span span = leak.span();
    node.put("from", state.path().station(span.from()));
    node.put("to", state.path().station(span.to()));
    names(node, "sections", IntStream.range(span.from(), span.to()).boxed().toList());
    node.set("vacuumLost", ResultTree.quantity(span.lost()));
    leak.leak().ifPresent(q -> node.set("leak", flow(q, leak.atLeast())));
    node.put("leaks", conclusion.leaking().contains(span));
  }

  private static ObjectNode flow(Quantity leak, boolean atLeast) {
    ObjectNode node = ResultTree.quantity(leak);
    return atLeast ? node.put("bound", "lower") : node;
  }

  private void names(ObjectNode tree, String member, List<Integer> sections) {
    sections.forEach(at -> tree.withArray(member).add(state.path().section(at)));
  }

  private void conclude(ObjectNode node) {
    SearchWords words = new SearchWords(state);
    node.put("code", conclusion.verdict().code());
    names(node, "sections", conclusion.leaking().stream().map(Span::from).toList());
    node.put("text", words.found(conclusion));
    node.put("advice", words.advice(conclusion));
  }
}

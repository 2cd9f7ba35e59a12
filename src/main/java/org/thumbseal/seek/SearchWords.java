package org.thumbseal.seek;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.seek.StationTest.Vacuum;

/** What a search says to the person at the bench, in plain sentences. */
public final class SearchWords {
  /** Before the first test: nobody shall catch anything, or be hurt. */
  public static final List<String> CAUTIONS =
      List.of(
          "Never a pump that is in use on a patient or stands ready as the only one. Local rules"
              + " and licensed practice decide.",
          "Gloves. Jar, tube and filter may carry germs: the jar empty and disinfected; whatever"
              + " held fluid is cleaned or renewed before it is touched.",
          "Switch off and unplug before hoses are moved; never open the pump or its case: mains"
              + " inside.",
          "Leave no water or soap on a joint: the pump draws it in. A filter stays between the hose"
              + " and the sensor.");

  private final SearchState state;
  private final SuctionPath path;

  /** Words about a search as it stands. */
  public SearchWords(SearchState state) {
    this.state = state;
    this.path = state.path();
  }

  /** What the last test tells, in one line; there must have been one. */
  public String told() {
    StationTest last = state.tests().get(state.tests().size() - 1);
    Vacuum vacuum = last.vacuum();
    String reached = path.station(last.station()) + ": " + stated(vacuum.stated(), "kPa") + ", ";
    String compared =
        state.spans().stream()
            .filter(span -> span.from() == last.station() || span.to() == last.station())
            .map(this::taken)
            .collect(Collectors.joining("; "));
    return reached + (compared.isEmpty() ? alone(last) : compared) + ".";
  }

  private String alone(StationTest test) {
    return String.format(
        Locale.ROOT,
        test.vacuum().isEnough()
            ? "the limit of %.1f kPa is reached: what lies from here to the pump does its work"
            : "below the limit of %.1f kPa: something between here and the pump leaks, or the pump"
                + " is weak",
        test.vacuum().limit());
  }

  private String taken(Span span) {
    SectionLeak leak =
        Intake.of(state).stream().filter(l -> l.span().equals(span)).findFirst().orElseThrow();
    return sections(span)
        + (span.isSingle() ? " takes " : " take ")
        + stated(span.lost(), "kPa")
        + leak.leak()
            .map(q -> " (" + (leak.atLeast() ? "at least " : "") + flow(q) + ")")
            .orElse("")
        + (counts(span)
            ? (span.isSingle() ? ": it leaks" : ": a leak is in there")
            : ": no leak to be told");
  }

  private boolean counts(Span span) {
    double sure = span.lost().value() - state.factor() * span.lost().standardUncertainty();
    return sure > LeakRules.least(state.ambient());
  }

  private static String flow(Quantity millilitres) {
    return String.format(
        Locale.ROOT, "%.0f +- %.0f mL/min", millilitres.value(), millilitres.expandedUncertainty());
  }

  private static String stated(Quantity quantity, String unit) {
    return String.format(
        Locale.ROOT, "%.1f +- %.1f %s", quantity.value(), quantity.expandedUncertainty(), unit);
  }

  /** Names of the sections of a stretch. */
  public String sections(Span span) {
    List<String> names = names(span);
    return names.size() == 1
        ? names.get(0)
        : String.join(", ", names.subList(0, names.size() - 1))
            + (names.size() > 2 ? ", and " : " and ")
            + names.get(names.size() - 1);
  }

  private List<String> names(Span span) {
    return path.stations().subList(span.from(), span.to()).stream()
        .map(station -> station.inward().name())
        .toList();
  }

  /** Where to block, and what to do before. */
  public String block(int station) {
    String apart =
        path.hasJar(station)
            ? "the jar in its place, lid shut"
            : "with the pump unplugged, take off what lies in front of it, the jar too";
    return "block at: " + path.station(station) + " (sensor on a tee there; " + apart + ").";
  }

  /** What was found, in one or two sentences. */
  public String found(Conclusion conclusion) {
    return switch (conclusion.verdict()) {
      case SECTION_LEAKS ->
          capital(taken(conclusion.leaking().get(0)))
              + (state.spans().size() > 1 ? ", more than anything else that was looked at." : ".");
      case SEVERAL_LEAK ->
          conclusion.leaking().stream().map(this::taken).collect(Collectors.joining("; "))
              + "; which is worst cannot be told.";
      case TIGHT ->
          "No section takes a vacuum that counts, and the pump reaches its limit: tight within the"
              + " uncertainty.";
      case PUMP_WEAK ->
          "No section in front of it leaks, and yet the limit is not reached: the pump itself is"
              + " weak, or its control lets air in.";
      case UNDECIDED ->
          "No section leaks for certain, and the vacuum is too near the limit to say that the pump"
              + " is weak.";
    };
  }

  /** What to do about it. */
  public String advice(Conclusion conclusion) {
    return switch (conclusion.verdict()) {
      case SECTION_LEAKS, SEVERAL_LEAK -> mend(conclusion.leaking().get(0)) + rest();
      case TIGHT ->
          "If the pump still seems weak on the ward, look for a blockage or a full jar there.";
      case PUMP_WEAK ->
          "See that the control stood at maximum. Then it is work for a qualified technician:"
              + " valves, diaphragm, what lies inside the case.";
      case UNDECIDED ->
          "Calibrate the sensor, or test again at the outermost and at the innermost station.";
    };
  }

  private String mend(Span span) {
    boolean jar = span.from() == path.jarInlet();
    String first =
        jar
            ? "Clean and reseat the lid gasket, renew it if it is hard or cracked; look at the rim"
                + " of the jar for chips, and at its hose joints."
            : "Reseat its joints one by one; renew what is cracked, hard or loose.";
    return first + " Then test again at " + path.station(span.from()) + ".";
  }

  private String rest() {
    List<Integer> outside = state.notLookedAt();
    return outside.isEmpty()
        ? ""
        : " Not looked at: "
            + outside.stream().map(path::section).collect(Collectors.joining(", "))
            + ".";
  }

  private static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }
}

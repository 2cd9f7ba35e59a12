package org.thumbseal.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.Referral.LastLook;
import org.thumbseal.refer.ReferredTest;
import org.thumbseal.refer.Untried;

/** What a referral says in words; the same on the sheet and in the terminal. */
final class ReferralSentences {
  private static final int MOST_PARTS = 7;
  private static final int MOST_ANSWERS = 12;
  private static final int MOST_DEEDS = 5;
  private static final int LONGEST_ITEM = 78;
  private static final int LONGEST_DEED = 120;
  private static final int LONGEST_FACT = 60;
  private static final int LONGEST_QUESTION = 160;
  private static final int LONGEST_FOUND = 240;

  private final Referral referral;
  private final Dates dates;

  ReferralSentences(Referral referral) {
    this.referral = referral;
    this.dates = new Dates(referral.subject().zone());
  }

  /** What the list of pumps says; empty where there is none. */
  String known() {
    return referral.subject().register().stream()
        .map(
            fact ->
                Clipped.text(
                    Words.of("refer.fact", fact.name()) + " " + fact.value(), LONGEST_FACT))
        .collect(Collectors.joining("; "));
  }

  /** What is to be heeded. */
  List<String> cautions() {
    List<String> said = new ArrayList<>();
    referral
        .infectiousSince()
        .ifPresent(day -> said.add(Words.text("refer.infectious", Dates.day(day))));
    said.add(Words.text("refer.caution"));
    return said;
  }

  /** How each item was last found. */
  List<String> looks() {
    List<String> lines = new ArrayList<>();
    for (Map.Entry<String, LastLook> each : referral.lastLooks().entrySet()) {
      ReferredTest.Looked looked = each.getValue().looked();
      lines.add(
          Clipped.text(
              item(each.getKey())
                  + ": "
                  + Words.of("state", looked.state())
                  + ", "
                  + day(each.getValue().at())
                  + more(looked),
              LONGEST_ITEM));
    }
    return Clipped.lines(lines, MOST_PARTS);
  }

  /** Which parts were put in, the last first. */
  List<String> parts() {
    List<String> lines =
        referral.replaced().stream()
            .map(last -> day(last.at()) + ": " + item(last.looked().item()) + more(last.looked()))
            .map(line -> Clipped.text(line, LONGEST_ITEM))
            .toList();
    return Clipped.lines(lines, MOST_PARTS);
  }

  private static String item(String code) {
    return Words.of("item", code);
  }

  private static String more(ReferredTest.Looked looked) {
    String said =
        Stream.of(looked.part(), looked.reason())
            .flatMap(Optional::stream)
            .collect(Collectors.joining(", "));
    return said.isEmpty() ? "" : " (" + said + ")";
  }

  private String day(Optional<Instant> at) {
    return at.map(dates::day).orElseGet(() -> Words.text("refer.undated"));
  }

  /** Of each kind of deed the last; guide and search have places of their own. */
  List<String> deeds() {
    List<String> lines =
        referral.lastDeeds().stream()
            .filter(d -> !d.work().equals(Deed.TROUBLE) && !d.work().equals(Deed.LEAK_SEARCH))
            .map(ReferralSentences::deed)
            .map(line -> Clipped.text(line, LONGEST_DEED))
            .toList();
    return Clipped.lines(lines, MOST_DEEDS);
  }

  private static String deed(Deed deed) {
    boolean unfit = deed.told().inOrder().filter(fit -> !fit).isPresent();
    return Dates.day(deed.on())
        + ": "
        + Words.of("work", deed.work())
        + deed.by().map(by -> ", " + by).orElse("")
        + (unfit ? ", " + Words.text("refer.unfit") : "")
        + deed.told().lines().stream().map(line -> "; " + line).collect(Collectors.joining());
  }

  /** Heading of the last of the two that have places of their own; empty where there is none. */
  Optional<String> head(String work) {
    long all = referral.deeds().stream().filter(d -> d.work().equals(work)).count();
    return referral
        .last(work)
        .map(
            deed ->
                Words.text("refer." + work, Dates.day(deed.on()))
                    + deed.by().map(by -> ", " + Clipped.text(by, 40)).orElse("")
                    + (all > 1 ? " " + Words.text("refer.earlier", all - 1) : ""));
  }

  /** The questions of the trouble guide, and what they came to. */
  List<String> guide() {
    List<String> lines = new ArrayList<>();
    referral
        .last(Deed.TROUBLE)
        .ifPresent(
            deed -> {
              deed.told()
                  .answers()
                  .forEach(
                      a ->
                          lines.add(
                              Clipped.end(a.question(), LONGEST_QUESTION)
                                  + " \u2192 "
                                  + Clipped.text(a.answer(), 70)));
            });
    List<String> shown = new ArrayList<>(Clipped.lines(lines, MOST_ANSWERS));
    shown.addAll(told(Deed.TROUBLE));
    return shown;
  }

  /** What the search for a leak found. */
  List<String> search() {
    return told(Deed.LEAK_SEARCH);
  }

  private List<String> told(String work) {
    return referral.last(work).stream()
        .flatMap(deed -> deed.told().lines().stream())
        .limit(3)
        .map(line -> Clipped.text(line, LONGEST_FOUND))
        .toList();
  }

  /** What was not tried since the last good test. */
  List<String> untried() {
    Untried untried = Untried.of(referral);
    List<String> lines = new ArrayList<>();
    items("refer.unseen", untried.unseen()).ifPresent(lines::add);
    items("refer.unreplaced", untried.unreplaced()).ifPresent(lines::add);
    untried
        .steps()
        .forEach(
            step -> lines.add(Words.text("refer.step." + step.name().toLowerCase(Locale.ROOT))));
    return lines.isEmpty() ? List.of(Words.text("refer.all-tried")) : lines;
  }

  private static Optional<String> items(String key, List<String> codes) {
    String names =
        codes.stream()
            .map(ReferralSentences::item)
            .map(name -> name.toLowerCase(Locale.ROOT))
            .collect(Collectors.joining(", "));
    return names.isEmpty() ? Optional.empty() : Optional.of(Words.text(key, names));
  }

  /** Since when it was not tried. */
  String since() {
    return Untried.of(referral)
        .since()
        .map(Dates::day)
        .map(day -> Words.text("refer.untried.since", day))
        .orElseGet(() -> Words.text("refer.untried"));
  }

  /** When the sheet was made. */
  String made() {
    return Words.text(
        "refer.made",
        dates.minute(referral.subject().made()),
        referral.tests().size(),
        referral.tests().stream().filter(ReferredTest::judges).count());
  }
}

package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Referral;

/** A referral for a terminal. */
public final class ReferralText {
  private static final int MOST_TESTS = 10;

  private final List<String> lines = new ArrayList<>();

  private ReferralText() {}

  /** The lines. */
  public static List<String> lines(Referral referral) {
    ReferralText text = new ReferralText();
    text.write(referral, new ReferralSentences(referral));
    return text.lines;
  }

  private void write(Referral referral, ReferralSentences said) {
    lines.add(Words.text("refer.title", referral.subject().asset()));
    lines.add(said.made());
    if (!said.known().isEmpty()) {
      lines.add(Words.text("refer.register", said.known()));
    }
    referral.subject().complaint().ifPresent(c -> lines.add(Words.text("refer.complaint", c)));
    lines.addAll(said.cautions());
    tests(referral);
    part(Words.text("refer.looks"), said.looks());
    part(Words.text("refer.parts"), said.parts());
    part(Words.text("refer.deeds"), said.deeds());
    said.head(Deed.TROUBLE).ifPresent(head -> part(head, said.guide()));
    said.head(Deed.LEAK_SEARCH).ifPresent(head -> part(head, said.search()));
    part(said.since(), said.untried());
  }

  private void part(String head, List<String> what) {
    if (!what.isEmpty()) {
      lines.add(head);
      what.forEach(line -> lines.add("    " + line));
    }
  }

  private void tests(Referral referral) {
    TextTable table =
        new TextTable(
            TextTable.Side.LEFT,
            TextTable.Side.LEFT,
            TextTable.Side.RIGHT,
            TextTable.Side.RIGHT,
            TextTable.Side.LEFT);
    for (ReferralRows.Row row : ReferralRows.of(referral, MOST_TESTS)) {
      table.row(
          row.date(),
          Words.of("verdict", row.shown()),
          row.values().get(0),
          row.values().get(1),
          row.remarks());
    }
    part(Words.text("history.tests"), table.lines().stream().map(String::stripTrailing).toList());
  }
}

package org.thumbseal.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.thumbseal.refer.Referral;

/** How the sheet of a referral is shared out: the more there is to say, the smaller its letters. */
enum ReferralRoom {
  AMPLE(16, 8),
  FULL(29, 5),
  LEAST(Integer.MAX_VALUE, 3);

  private static final int WIDE = 140;
  private static final int HALF = 64;
  private static final int REMARK = 22;

  private final int lines;
  private final int tests;

  ReferralRoom(int lines, int tests) {
    this.lines = lines;
    this.tests = tests;
  }

  static ReferralRoom of(ReferralSentences said, Referral referral) {
    int halves = Math.max(lines(said.looks(), HALF), lines(said.parts(), HALF));
    int whole =
        Stream.of(
                said.deeds(),
                said.guide(),
                said.search(),
                List.of(said.known(), complaint(referral)))
            .mapToInt(lines -> lines(lines, WIDE))
            .sum();
    return Stream.of(values())
        .filter(room -> halves + whole + broken(referral, room.tests) <= room.lines)
        .findFirst()
        .orElse(LEAST);
  }

  private static String complaint(Referral referral) {
    return referral.subject().complaint().orElse("");
  }

  /** How many lines more the tests take because their remarks do not go into one. */
  private static int broken(Referral referral, int tests) {
    List<String> remarks =
        ReferralRows.of(referral, tests).stream().map(ReferralRows.Row::remarks).toList();
    return lines(remarks, REMARK) - remarks.size();
  }

  private static int lines(List<String> texts, int width) {
    return texts.stream().mapToInt(text -> 1 + text.length() / width).sum();
  }

  /** How many tests have a line. */
  int tests() {
    return tests;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

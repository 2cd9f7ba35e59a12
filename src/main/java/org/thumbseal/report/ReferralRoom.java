package org.thumbseal.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** How the sheet of a referral is shared out: the more there is to say, the smaller its letters. */
enum ReferralRoom {
  AMPLE(16, 8),
  FULL(29, 5),
  LEAST(Integer.MAX_VALUE, 3);

  private static final int WIDE = 140;
  private static final int HALF = 64;

  private final int lines;
  private final int tests;

  ReferralRoom(int lines, int tests) {
    this.lines = lines;
    this.tests = tests;
  }

  static ReferralRoom of(ReferralSentences said, String complaint) {
    int halves = Math.max(lines(said.looks(), HALF), lines(said.parts(), HALF));
    int whole =
        Stream.of(said.deeds(), said.guide(), said.search(), List.of(said.known(), complaint))
            .mapToInt(lines -> lines(lines, WIDE))
            .sum();
    return Stream.of(values())
        .filter(room -> halves + whole <= room.lines)
        .findFirst()
        .orElse(LEAST);
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

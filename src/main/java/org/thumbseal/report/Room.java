package org.thumbseal.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.thumbseal.json.DocumentView;

/** How a sheet is shared out: the more there is to say, the smaller letters and curve. */
enum Room {
  AMPLE(430, 620),
  FAIR(350, 1_100),
  SCARCE(290, 1_500),
  LEAST(220, 1_900);

  /** An item begins a line, and its last line is seldom full. */
  private static final int ITEM = 50;

  /** Part and reason of a check have half a column. */
  private static final int NARROW = 2;

  private final double curveHeight;
  private final int characters;

  Room(double curveHeight, int characters) {
    this.curveHeight = curveHeight;
    this.characters = characters;
  }

  static Room of(Report report) {
    int needed = needed(report);
    return Stream.of(values()).filter(room -> needed <= room.characters).findFirst().orElse(LEAST);
  }

  /** Height of the curve in units of the drawing. */
  double curveHeight() {
    return curveHeight;
  }

  /** How many characters of reasons and findings there is room for. */
  int characters(Report report) {
    return characters - above(report) - 2 * ITEM;
  }

  /** What stands above the curve takes two columns. */
  private static int above(Report report) {
    int note = report.standing().note().map(Room::cost).orElse(0);
    int why = report.standing().voided().map(Room::cost).orElse(0);
    int corrections = Headline.shown(report).stream().mapToInt(Room::cost).sum();
    return 2 * (note + why + corrections) + 4 * Math.max(0, report.asset().length() - 40);
  }

  private static int needed(Report report) {
    DocumentView document = report.document();
    int said =
        lengths(document.list("/reasons"), "/text")
            + lengths(document.list("/findings"), "/text")
            + lengths(document.list("/findings"), "/advice");
    List<DocumentView> checks = document.list("/checks");
    int left =
        ITEM * (checks.size() + 4)
            + NARROW * (lengths(checks, "/part") + lengths(checks, "/reason"));
    return Math.max(said, left) + above(report);
  }

  private static int lengths(List<DocumentView> items, String place) {
    return items.stream().mapToInt(item -> item.text(place).map(Room::cost).orElse(0)).sum();
  }

  /** What a text takes, in characters. */
  static int cost(String text) {
    return Math.min(400, text.length()) + ITEM / 2;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

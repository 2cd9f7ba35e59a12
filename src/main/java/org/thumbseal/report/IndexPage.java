package org.thumbseal.report;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.thumbseal.json.DocumentView.Measured;

/** Many results side by side, each with a small curve; void ones are shown, and as void. */
public final class IndexPage {
  /** Results on one page; more would make a browser slow. */
  public static final int MOST = 200;

  private final Part part;
  private final Markup cards = new Markup();
  private int count;

  /**
   * One of the pages of an index.
   *
   * @param of name of the folder that it shows
   * @param number of this page, from 1
   */
  public record Part(String of, int number) {
    private static final Pattern NUMBERED = Pattern.compile("index-([1-9]\\d{0,5})\\.html");

    /** The name of its file. */
    public String file() {
      return number == 1 ? "index.html" : "index-" + number + ".html";
    }

    /** Whether a file has the name of a page after this one. */
    public boolean isBeyond(String file) {
      Matcher numbered = NUMBERED.matcher(file);
      return numbered.matches() && Integer.parseInt(numbered.group(1)) > number;
    }

    /** The page with the results before these in time. */
    public Part next() {
      return new Part(of, number + 1);
    }
  }

  /** An empty page. */
  public IndexPage(Part part) {
    this.part = part;
  }

  /** Adds a result; the file is that of its own page, beside this one. */
  public void add(Report report, Optional<String> file) {
    count++;
    cards.open("li", attributes(report));
    file.ifPresentOrElse(f -> cards.open("a", "href", encoded(f)), () -> cards.open("span"));
    cards.add(SmallCurve.of(report)).add(VerdictShape.of(report.shown()));
    cards.element("b", Words.of("verdict", report.shown())).element("b", report.asset());
    line(UtcTime.text(report.document()).orElseGet(() -> Words.text("undated")));
    line(value(report, "riseTime", "index.rise") + value(report, "maximumVacuum", "index.maximum"));
    line(reasons(report));
    cards.close().close().line();
  }

  /** Whether there is no room for more. */
  public boolean isFull() {
    return count >= MOST;
  }

  /** Which page it is. */
  public Part part() {
    return part;
  }

  /** Whether nothing was added. */
  public boolean isEmpty() {
    return count == 0;
  }

  private void line(String text) {
    cards.element("small", text);
  }

  private static String[] attributes(Report report) {
    return new String[] {
      "class", report.shown(),
      "data-pump", report.asset(),
      "data-time", UtcTime.blocked(report.document()).map(Object::toString).orElse(""),
      "data-verdict", report.shown(),
      "data-rise", number(report, "riseTime"),
      "data-maximum", number(report, "maximumVacuum"),
    };
  }

  private static String number(Report report, String name) {
    return report
        .document()
        .number("/measurements/" + name + "/value")
        .map(value -> String.format(Locale.ROOT, "%.4f", value))
        .orElse("");
  }

  private static String value(Report report, String name, String words) {
    Optional<Measured> measured = report.document().quantity("/measurements/" + name);
    return measured.map(q -> Words.text(words, Numbers.withUncertainty(q))).orElse("");
  }

  private static String reasons(Report report) {
    return report.document().list("/reasons").stream()
        .limit(4)
        .flatMap(reason -> reason.text("/code").stream())
        .collect(Collectors.joining(", "));
  }

  private static String encoded(String file) {
    return URLEncoder.encode(file, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /**
   * The page, complete in itself.
   *
   * @param more whether another one follows
   */
  public String html(boolean more) {
    int first = MOST * (part.number() - 1);
    Markup body = new Markup().open("main");
    body.element("h1", Words.text("index.title", part.of()));
    body.element("p", Words.text("index.count", first + 1, first + count));
    neighbours(body, more);
    body.open("p", "id", "sort", "hidden", "hidden").text(Words.text("index.sort"));
    for (String by : List.of("time", "pump", "verdict", "rise", "maximum")) {
      body.text(" ").element("button", Words.text("index.by." + by), "data-by", by);
    }
    body.close().line().open("ul", "id", "results", "class", "cards").line().add(cards).close();
    body.line().element("p", Words.text("caution")).close().line();
    return PageFrame.page(
        new PageFrame.Head(
            Words.text("index.title", part.of()),
            "index of " + part.of(),
            Styles.text("index.css"),
            Styles.text("index.js")),
        body);
  }

  private void neighbours(Markup body, boolean more) {
    if (part.number() > 1) {
      Part newer = new Part(part.of(), part.number() - 1);
      body.open("p").element("a", Words.text("index.newer"), "href", newer.file()).close().line();
    }
    if (more) {
      body.open("p").element("a", Words.text("index.older"), "href", part.next().file()).close();
    }
  }
}

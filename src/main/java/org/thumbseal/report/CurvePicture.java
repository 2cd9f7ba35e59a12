package org.thumbseal.report;

import java.util.List;
import org.thumbseal.json.DocumentView;
import org.thumbseal.pipeline.CurvePoints.Point;

/**
 * The curve of a test as SVG, with all that it is held against: phases, the corridor it has to stay
 * in, and the model of pump and jar with its uncertainty. It is legible without colours, has no
 * scripts, and loads nothing.
 */
public final class CurvePicture {
  /** Width of the drawing in its own units, four to a millimetre. */
  static final double WIDTH = 760;

  private static final double FILE_HEIGHT = 380;

  private static final String INK = "#111111";
  private static final String FAINT = "#cccccc";
  private static final String BAND = "#dcdcdc";
  private static final String CURVE = "#0b3d78";

  private final Report report;
  private final DocumentView document;
  private final Trace trace;
  private final TestShape shape;
  private final List<PumpModel.At> model;
  private final Plot plot;
  private final double height;
  private final Corridor corridor;
  private final Markup svg = new Markup();

  private CurvePicture(Report report, double height) {
    this.report = report;
    document = report.document();
    trace = report.trace();
    this.height = height;
    shape = new TestShape(document);
    model = PumpModel.of(document);
    plot = plot();
    double highest = highest();
    corridor = new Corridor(plot, shape, shape.maximum().filter(m -> highest < m).isPresent());
  }

  /** Part of a page; its height is in units of the drawing. */
  static Markup inPage(Report report, double height) {
    return new CurvePicture(report, height).drawn();
  }

  /** A file of its own. */
  public static String file(Report report) {
    Markup drawn = new CurvePicture(report, FILE_HEIGHT).drawn();
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + drawn + "\n";
  }

  private double highest() {
    return trace.points().stream().mapToDouble(Point::kilopascals).max().orElse(0);
  }

  private Plot plot() {
    double lowest = trace.points().stream().mapToDouble(Point::kilopascals).min().orElse(0);
    double limit = Math.max(shape.riseLevel().orElse(0.0), shape.maximum().orElse(0.0));
    double top = 10 * Math.ceil(Math.min(300, Math.max(highest(), limit)) / 10 + 0.2);
    double bottom = Math.max(-50, Math.min(0, 5 * Math.floor(lowest / 5 + 0.6)));
    Plot.Area area = new Plot.Area(44, 32, WIDTH - 10, height - 50);
    return new Plot(area, shape.span(), bottom, top);
  }

  private Markup drawn() {
    svg.open(
        "svg",
        "xmlns",
        "http://www.w3.org/2000/svg",
        "viewBox",
        "0 0 " + Markup.at(WIDTH) + " " + Markup.at(height),
        "role",
        "img",
        "font-family",
        "system-ui, 'DejaVu Sans', Arial, sans-serif",
        "font-size",
        "11",
        "fill",
        INK);
    svg.element("title", Words.text("curve.title"));
    svg.element("desc", ReportFile.DRAWING + document.text("/id").orElse(""));
    svg.shape("rect", "width", "100%", "height", "100%", "fill", "#ffffff");
    axes();
    band();
    corridor.draw(svg);
    phases();
    gaps();
    modelLine();
    curve();
    corridor.label(svg);
    stamp();
    legend();
    return svg.close();
  }

  private void axes() {
    for (double v = Math.ceil(plot.bottom() / 20) * 20; v <= plot.top() + 1e-9; v += 20) {
      line(plot.area().left(), plot.y(v), plot.area().right(), plot.y(v), FAINT);
      label(plot.area().left() - 5, plot.y(v) + 4, "end", Markup.number("%.0f", v));
    }
    double step = step();
    double first = Math.ceil(plot.span().from() / step) * step;
    for (double t = first; t <= plot.span().to() + 1e-9; t += step) {
      line(plot.x(t), plot.area().bottom(), plot.x(t), plot.area().bottom() + 4, INK);
      label(plot.x(t), plot.area().bottom() + 16, "middle", Markup.number("%.0f", t + 0.0));
    }
    label(4, 11, "start", Words.text("curve.vertical"));
    String across = shape.isBlocked() ? "curve.since-blocked" : "curve.since-first";
    label(plot.area().right(), plot.area().bottom() + 29, "end", Words.text(across));
    line(plot.area().left(), plot.area().bottom(), plot.area().right(), plot.area().bottom(), INK);
    line(plot.area().left(), plot.area().top(), plot.area().left(), plot.area().bottom(), INK);
  }

  private double step() {
    double length = plot.span().to() - plot.span().from();
    return length > 60 ? 10 : length > 30 ? 5 : 2;
  }

  private void band() {
    StringBuilder path = new StringBuilder();
    List<PumpModel.At> shown = shown();
    for (PumpModel.At at : shown) {
      add(path, plot.x(at.seconds()), plot.inside(plot.y(at.kilopascals() + at.expanded())));
    }
    for (int i = shown.size() - 1; i >= 0; i--) {
      PumpModel.At at = shown.get(i);
      add(path, plot.x(at.seconds()), plot.inside(plot.y(at.kilopascals() - at.expanded())));
    }
    if (shown.stream().allMatch(PumpModel.At::hasBand) && !shown.isEmpty()) {
      svg.shape("path", "class", "band", "d", path + "Z", "fill", BAND);
    }
  }

  private List<PumpModel.At> shown() {
    return model.stream().filter(at -> plot.shows(at.seconds())).toList();
  }

  private void modelLine() {
    StringBuilder path = new StringBuilder();
    shown().forEach(at -> add(path, plot.x(at.seconds()), plot.inside(plot.y(at.kilopascals()))));
    if (!path.isEmpty()) {
      stroke("model", path.toString(), INK, "1.1", "5 3");
    }
  }

  private void phases() {
    double y = plot.area().top() - 4;
    for (TestShape.PhaseOf phase : shape.phases()) {
      double from = plot.clippedX(phase.from());
      double to = plot.clippedX(phase.to());
      if (phase.from() > plot.span().from() && phase.from() < plot.span().to()) {
        stroke(
            "phase",
            "M" + Markup.at(from) + " 18V" + Markup.at(plot.area().bottom()),
            "#777777",
            "0.8",
            "1.5 2.5");
      }
      String name = Words.of("phase", phase.code());
      if (to - from > 6.5 * name.length()) {
        label((from + to) / 2, y, "middle", name);
      }
    }
  }

  private void gaps() {
    for (Trace.Gap gap : trace.gaps()) {
      double from = plot.clippedX(gap.from());
      double width = Math.max(1, plot.clippedX(gap.to()) - from);
      svg.shape(
          "rect",
          "class",
          "gap",
          "x",
          Markup.at(from),
          "y",
          Markup.at(plot.area().top()),
          "width",
          Markup.at(width),
          "height",
          Markup.at(plot.area().bottom() - plot.area().top()),
          "fill",
          "#bbbbbb");
    }
  }

  private void curve() {
    for (List<Point> piece : trace.pieces()) {
      StringBuilder path = new StringBuilder();
      piece.forEach(p -> add(path, plot.x(p.seconds()), plot.near(plot.y(p.kilopascals()))));
      stroke("curve", path.toString(), CURVE, "1.8", "none");
    }
    trace.missing().ifPresent(this::sayMissing);
  }

  /** Across the curve, so that it stays with it when the curve alone is copied. */
  private void stamp() {
    if (report.standing().voided().isPresent()) {
      double middle = (plot.area().left() + plot.area().right()) / 2;
      double y = (plot.area().top() + plot.area().bottom()) / 2;
      svg.element(
          "text",
          Words.of("verdict", "void"),
          "class",
          "stamp",
          "x",
          Markup.at(middle),
          "y",
          Markup.at(y + 50),
          "text-anchor",
          "middle",
          "font-size",
          "150",
          "font-weight",
          "bold",
          "fill-opacity",
          "0.22",
          "transform",
          "rotate(-12 " + Markup.at(middle) + " " + Markup.at(y) + ")");
    }
  }

  private void sayMissing(String why) {
    double middle = (plot.area().left() + plot.area().right()) / 2;
    double y = (plot.area().top() + plot.area().bottom()) / 2;
    halo(middle, y - 8, "middle", Words.text("curve.none"), "16");
    halo(middle, y + 10, "middle", why, "11");
  }

  private void legend() {
    double y = height - 8;
    double x = plot.area().left();
    stroke("key", "M" + Markup.at(x) + " " + Markup.at(y - 4) + "h24", CURVE, "1.8", "none");
    label(x + 29, y, "start", Words.text("legend.measured"));
    if (!model.isEmpty()) {
      rectangle(x + 106, y - 9, BAND);
      stroke("key", "M" + Markup.at(x + 106) + " " + Markup.at(y - 4) + "h24", INK, "1.1", "5 3");
      String words = PumpModel.distrust(document).isEmpty() ? "legend.model" : "legend.distrusted";
      label(x + 135, y, "start", Words.text(words));
    }
    if (!trace.gaps().isEmpty()) {
      rectangle(x + 560, y - 9, "#bbbbbb");
      label(x + 589, y, "start", Words.text("legend.gap"));
    }
  }

  private void rectangle(double x, double y, String fill) {
    String[] place = {Markup.at(x), Markup.at(y)};
    svg.shape("rect", "x", place[0], "y", place[1], "width", "24", "height", "10", "fill", fill);
  }

  private static void add(StringBuilder path, double x, double y) {
    path.append(path.isEmpty() ? 'M' : 'L').append(Markup.at(x)).append(' ').append(Markup.at(y));
  }

  private void line(double x1, double y1, double x2, double y2, String colour) {
    String path =
        "M" + Markup.at(x1) + " " + Markup.at(y1) + "L" + Markup.at(x2) + " " + Markup.at(y2);
    stroke("axis", path, colour, "0.7", "none");
  }

  private void stroke(String of, String path, String... colourWidthDashes) {
    svg.shape(
        "path",
        "class",
        of,
        "d",
        path,
        "fill",
        "none",
        "stroke",
        colourWidthDashes[0],
        "stroke-width",
        colourWidthDashes[1],
        "stroke-dasharray",
        colourWidthDashes[2],
        "stroke-linejoin",
        "round");
  }

  private void label(double x, double y, String anchor, String text) {
    svg.element("text", text, "x", Markup.at(x), "y", Markup.at(y), "text-anchor", anchor);
  }

  private void halo(double x, double y, String anchor, String... textAndSize) {
    svg.element(
        "text",
        textAndSize[0],
        "x",
        Markup.at(x),
        "y",
        Markup.at(y),
        "text-anchor",
        anchor,
        "font-size",
        textAndSize[1],
        "stroke",
        "#ffffff",
        "stroke-width",
        "4",
        "paint-order",
        "stroke");
  }
}

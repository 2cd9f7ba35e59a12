package org.thumbseal.report;

import java.util.Locale;
import org.thumbseal.json.DocumentView.Measured;

/** Numbers as people read them. */
final class Numbers {
  private Numbers() {}

  /** Value, uncertainty and unit; two decimal places, fewer where the uncertainty is large. */
  static String withUncertainty(Measured quantity) {
    double u = quantity.expanded().orElse(0.0);
    String form = u >= 10 ? "%.0f" : "%.2f";
    String value = String.format(Locale.ROOT, form, quantity.value());
    String range = quantity.expanded().isEmpty() ? "" : " \u00B1 " + form;
    return value + String.format(Locale.ROOT, range, u) + " " + quantity.unit();
  }

  /** Without zeros at the end, four decimal places at most. */
  static String plain(double value) {
    String text = String.format(Locale.ROOT, "%.4f", value);
    return text.replaceAll("\\.?0+$", "");
  }
}

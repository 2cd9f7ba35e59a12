package org.thumbseal.measurement;

/**
 * One line of an uncertainty budget, as JCGM 100:2008 (GUM) 5.1 has it: an input with its standard
 * uncertainty, and how strongly the quantity follows it.
 *
 * @param name what it is
 * @param input what is known of the input
 * @param sensitivity change of the quantity for a change of the input by one unit
 * @param source how the input is known
 */
public record Contribution(String name, Input input, double sensitivity, String source) {

  /** A correction of the quantity itself, estimated as 0, of which only the spread is known. */
  public Contribution(String name, double standardUncertainty, String source) {
    this(name, Input.normal(0, standardUncertainty, ""), 1, source);
  }

  /** An input that the quantity follows one to one. */
  static Contribution of(String name, Input input, String source) {
    return new Contribution(name, input, 1, source);
  }

  /** Shape of what is believed of an input. */
  public enum Distribution {
    /** Scatter, a fit, or a certificate: the spread is a standard uncertainty. */
    NORMAL("normal", 1),
    /** Anywhere within a half width. */
    RECTANGULAR("rectangular", Math.sqrt(3)),
    /** The difference of two rectangular ones of half that half width each. */
    TRIANGULAR("triangular", Math.sqrt(6));

    private final String code;
    private final double divisor;

    Distribution(String code, double divisor) {
      this.code = code;
      this.divisor = divisor;
    }

    /** The name in result documents. */
    public String code() {
      return code;
    }

    /** What the spread is divided by to get the standard uncertainty (JCGM 100:2008 4.3). */
    public double divisor() {
      return divisor;
    }
  }

  /**
   * An input of a measurement.
   *
   * @param estimate best estimate, in {@code unit}
   * @param spread standard uncertainty of a normal distribution, half width of any other
   * @param distribution shape
   * @param unit UCUM code; empty where it is that of the quantity
   */
  public record Input(double estimate, double spread, Distribution distribution, String unit) {
    static Input normal(double estimate, double standardUncertainty, String unit) {
      return new Input(estimate, standardUncertainty, Distribution.NORMAL, unit);
    }

    static Input rectangular(double estimate, double halfWidth, String unit) {
      return new Input(estimate, halfWidth, Distribution.RECTANGULAR, unit);
    }

    static Input triangular(double estimate, double halfWidth, String unit) {
      return new Input(estimate, halfWidth, Distribution.TRIANGULAR, unit);
    }

    /** An input of which the standard uncertainty is known, and the shape it comes from. */
    static Input shaped(double estimate, double standardUncertainty, Distribution distribution) {
      return new Input(estimate, standardUncertainty * distribution.divisor(), distribution, "");
    }

    /** u(x), in {@link #unit}. */
    public double standardUncertainty() {
      return spread / distribution.divisor();
    }
  }

  /** What it adds to the quantity, |c| u(x), in the unit of the quantity. */
  public double standardUncertainty() {
    return Math.abs(sensitivity) * input.standardUncertainty();
  }

  /**
   * The same line in the budget of another quantity that follows this one.
   *
   * @param unit of this quantity, UCUM
   * @param factor change of the other quantity for a change of this one by one unit
   */
  Contribution through(String unit, double factor) {
    Input same = new Input(input.estimate(), input.spread(), input.distribution(), inputUnit(unit));
    return new Contribution(name, same, sensitivity * factor, source);
  }

  /** Unit of the input, UCUM, in the budget of a quantity with a unit. */
  public String inputUnit(String ofQuantity) {
    return input.unit().isEmpty() ? ofQuantity : input.unit();
  }

  /** Unit of the sensitivity, UCUM, in the budget of a quantity with a unit. */
  public String sensitivityUnit(String ofQuantity) {
    String under = inputUnit(ofQuantity);
    if (under.equals(ofQuantity)) {
      return "1";
    }
    if (under.equals("1")) {
      return ofQuantity;
    }
    return ofQuantity + "/" + (under.contains("/") ? "(" + under + ")" : under);
  }
}

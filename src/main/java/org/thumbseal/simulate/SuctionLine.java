package org.thumbseal.simulate;

import java.util.ArrayList;
import java.util.List;

/**
 * The suction path in front of a pump as a row of stretches, from the patient end inwards. It can
 * be blocked in front of each; what lies further out is then off.
 *
 * <p>All stretches that are left make one volume of gas, into which their leaks let air: nothing in
 * a sound path holds back the little that flows once the inlet is blocked.
 *
 * @param plant pump, weather, open inlet and jar; its own volume and leak are those of the jar
 * @param stretches at least one
 */
public record SuctionLine(Plant plant, List<Stretch> stretches) {
  private static final double LITRES_IN_CUBIC_METRE = 1_000;

  /**
   * One stretch.
   *
   * @param litres volume of its hoses, L, above 0; of the jar's stretch what is there besides the
   *     jar
   * @param leak what it lets in while choked, L/min of ambient air; 0 for a tight one
   * @param jar whether the jar is in it
   */
  public record Stretch(double litres, double leak, boolean jar) {
    /** Refuses values out of range. */
    public Stretch {
      Demand.that(litres > 0, "the volume of a stretch must be above 0");
      Demand.notNegative(leak, "leak of a stretch");
    }

    /** The same stretch with a leak, L/min of ambient air. */
    public Stretch leaking(double litresPerMinute) {
      return new Stretch(litres, litresPerMinute, jar);
    }
  }

  /** Keeps a copy. */
  public SuctionLine {
    stretches = List.copyOf(stretches);
    Demand.that(!stretches.isEmpty(), "there must be a stretch");
  }

  /** The same path with a leak in one stretch, counted from 0, L/min of ambient air. */
  public SuctionLine leaking(int stretch, double litresPerMinute) {
    List<Stretch> all = new ArrayList<>(stretches);
    all.set(stretch, all.get(stretch).leaking(litresPerMinute));
    return new SuctionLine(plant, all);
  }

  /** What the pump stands before when the path is blocked in front of a stretch. */
  public Plant from(int stretch) {
    List<Stretch> left = stretches.subList(stretch, stretches.size());
    double leak = left.stream().mapToDouble(Stretch::leak).sum();
    double hoses = left.stream().mapToDouble(Stretch::litres).sum() / LITRES_IN_CUBIC_METRE;
    boolean jar = left.stream().anyMatch(Stretch::jar);
    return plant
        .with(jar ? withHoses(plant.jar(), hoses) : hosesAlone(hoses))
        .with(plant.circuit().leaking(plant.circuit().leakArea() + plant.areaOfLeak(leak)));
  }

  private static Jar withHoses(Jar jar, double cubicMetres) {
    double volume = jar.cubicMetres() + cubicMetres;
    return new Jar(volume, jar.wallConductance(), jar.nominalLitres());
  }

  /** Gas in a hose a few millimetres wide has the temperature of its wall. */
  private static Jar hosesAlone(double cubicMetres) {
    return new Jar(cubicMetres, Double.POSITIVE_INFINITY, cubicMetres * LITRES_IN_CUBIC_METRE);
  }
}

package org.thumbseal.pipeline;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.LongStream;
import org.thumbseal.pipeline.DrawnDecay.Outcome;

/**
 * Leak rates of drawn decays against what leaked in truth: how many, and the first seed.
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.mainClass=org.thumbseal.pipeline.DecayStudy \
 *     -Dexec.classpathScope=test -Dexec.args="500 20000"
 * </pre>
 */
final class DecayStudy {
  private final PrintStream out;
  private final List<Outcome> all;

  private DecayStudy(PrintStream out, List<Outcome> all) {
    this.out = out;
    this.all = all;
  }

  static List<Outcome> outcomes(long firstSeed, int count) {
    return LongStream.range(firstSeed, firstSeed + count)
        .mapToObj(seed -> new DrawnDecay(seed).outcome())
        .toList();
  }

  /** Prints the tables. */
  public static void main(String[] args) {
    List<Outcome> all = outcomes(Long.parseLong(args[1]), Integer.parseInt(args[0]));
    new DecayStudy(System.out, all).print();
  }

  private void print() {
    row("all", o -> true);
    row("tight, pump off", o -> o.truth() == 0 && !o.pinched());
    row("tight, pinched", o -> o.truth() == 0 && o.pinched());
    row("50 to 200 mL/min", o -> o.truth() > 0 && o.truth() < 200);
    row("200 to 1000 mL/min", o -> o.truth() >= 200 && o.truth() < 1_000);
    row("1 to 5 L/min", o -> o.truth() >= 1_000);
    compare("50 to 1000 mL/min", o -> o.truth() > 0 && o.truth() < 1_000);
    compare("1 to 5 L/min", o -> o.truth() >= 1_000);
  }

  private void row(String name, Predicate<Outcome> which) {
    List<Outcome> of = all.stream().filter(which).toList();
    List<Outcome> measured = of.stream().filter(o -> o.leak().isPresent()).toList();
    long found = of.stream().filter(o -> o.decay().isPresent()).count();
    double[] errors = sorted(measured, o -> Math.abs(o.error()));
    double[] expanded = sorted(measured, Outcome::expanded);
    long covered = measured.stream().filter(Outcome::isCovered).count();
    out.printf(
        Locale.ROOT,
        "%-20s n %4d found %4d measured %4d  |error| median %6.1f p90 %6.1f  U median %6.1f"
            + " mL/min  covered %5.1f %%%n",
        name,
        of.size(),
        found,
        measured.size(),
        at(errors, 0.5),
        at(errors, 0.9),
        at(expanded, 0.5),
        100.0 * covered / Math.max(1, measured.size()));
  }

  /** Errors of the rate alone, in per cent: those drawn for volume, air and gain taken out. */
  private void compare(String name, Predicate<Outcome> which) {
    List<Outcome> of = all.stream().filter(which).filter(o -> o.leak().isPresent()).toList();
    shares(
        name + ", jar model",
        sorted(of, o -> 100 * (o.leak().orElseThrow().value() * o.known() / o.truth() - 1)));
    List<Outcome> long15 = of.stream().filter(o -> Double.isFinite(o.line())).toList();
    shares(name + ", line from 15 s on", sorted(long15, o -> 100 * (o.line() / o.truth() - 1)));
  }

  private void shares(String name, double[] errors) {
    out.printf(
        Locale.ROOT,
        "%-38s n %4d  5 %% %6.2f  median %6.2f  95 %% %6.2f %%%n",
        name,
        errors.length,
        at(errors, 0.05),
        at(errors, 0.5),
        at(errors, 0.95));
  }

  private static double[] sorted(List<Outcome> of, ToDoubleFunction<Outcome> what) {
    return of.stream().mapToDouble(what).sorted().toArray();
  }

  private static double at(double[] sorted, double share) {
    int index = (int) Math.min(sorted.length - 1, share * sorted.length);
    return sorted.length == 0 ? Double.NaN : sorted[index];
  }
}

package org.thumbseal.fuzz;

/**
 * The long run, by command: {@code Fuzz TARGET COUNT SEED [FROM]}. Ends with the figures, or at the
 * first fault with the seed, the number and the bytes of the input.
 */
final class Fuzz {
  private static final long CHUNK = 50_000;

  private Fuzz() {}

  /** Runs one target. */
  public static void main(String[] args) throws Exception {
    if (args.length < 3 || !Targets.all().containsKey(args[0])) {
      System.err.println("Fuzz TARGET COUNT SEED [FROM]; targets: " + Targets.all().keySet());
      System.exit(2);
    }
    long seed = Long.parseLong(args[2]);
    Campaign campaign = new Campaign(args[0], Targets.of(args[0]), seed);
    long begun = System.nanoTime();
    long from = args.length > 3 ? Long.parseLong(args[3]) : 0;
    long end = from + Long.parseLong(args[1]);
    for (long at = from; at < end; at += CHUNK) {
      campaign.run(at, Math.min(CHUNK, end - at));
      System.err.println(Math.min(at + CHUNK, end) + " of " + end);
    }
    System.out.print(campaign.figures());
    System.out.printf(
        "%s: %s inputs, seed %d, %.0f s%n",
        args[0], args[1], seed, (System.nanoTime() - begun) / 1e9);
  }
}

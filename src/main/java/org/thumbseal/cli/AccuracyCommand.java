package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.accuracy.Accuracy;
import org.thumbseal.accuracy.AccuracyTable;
import org.thumbseal.accuracy.UnreadableCapturesException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints how good the measurement is, beside how good it must be. */
@Command(
    name = "accuracy",
    mixinStandardHelpOptions = true,
    description = {
      "Measure simulated pumps, or captures whose truth is known, and hold the results against what"
          + " they must be. No pump is tested by this.",
      "Exit code 1 when something is not as good as it must be."
    })
final class AccuracyCommand implements Callable<Integer> {
  private static final int MOST_PUMPS = 100_000;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--pumps",
      paramLabel = "N",
      defaultValue = "1000",
      description = "so many pumps (default: ${DEFAULT-VALUE})")
  private int pumps;

  @Option(
      names = "--seed",
      paramLabel = "S",
      defaultValue = "271828",
      description = "the same seed gives the same table (default: ${DEFAULT-VALUE})")
  private long seed;

  @Option(
      names = "--findings",
      description = "try the findings as well, each pump beside its own sound record")
  private boolean findings;

  @Option(
      names = "--captures",
      paramLabel = "DIR",
      description =
          "instead of simulated pumps: captures in a folder, with a truth.json beside them")
  private @Nullable Path captures;

  @Override
  public Integer call() {
    AccuracyTable table = table();
    PrintWriter out = spec.commandLine().getOut();
    table.lines().forEach(out::println);
    out.flush();
    return table.isMet() ? ExitCode.GOOD : ExitCode.NOT_PASSED;
  }

  private AccuracyTable table() {
    if (captures != null) {
      return ofCaptures(captures);
    }
    if (pumps < 1 || pumps > MOST_PUMPS) {
      throw Failure.usage("--pumps must be between 1 and " + MOST_PUMPS + ", not " + pumps);
    }
    PrintWriter err = spec.commandLine().getErr();
    return Accuracy.simulated(new Accuracy.Run(pumps, seed, findings), err::println);
  }

  private static AccuracyTable ofCaptures(Path folder) {
    try {
      return Accuracy.ofCaptures(folder);
    } catch (UnreadableCapturesException e) {
      throw Failure.usage(String.valueOf(e.getMessage()));
    }
  }
}

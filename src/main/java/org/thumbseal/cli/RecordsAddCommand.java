package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.thumbseal.index.KeptOut;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.index.Refreshed;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Brings the index up to date. */
@Command(
    name = "add",
    description = {
      "Take into the index what is new in the results.",
      "The commands that read the index do this by themselves; it is for results that other"
          + " computers are to see in a shared base."
    },
    mixinStandardHelpOptions = true)
final class RecordsAddCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private RecordsOptions options = new RecordsOptions();

  @Parameters(arity = "0..*", paramLabel = "DIR", description = "further results directories")
  private List<Path> more = List.of();

  @Override
  public Integer call() {
    return new RecordsWork(spec, options, more).run(RecordsAddCommand::refreshed);
  }

  private static Refreshed refreshed(Records records, List<Path> directories, TrustStore trust)
      throws RecordsException {
    long added = 0;
    long removed = 0;
    List<KeptOut> keptOut = new ArrayList<>();
    for (Path directory : directories) {
      Refreshed one = records.refresh(directory, trust);
      added += one.added();
      removed += one.removed();
      keptOut.addAll(one.keptOut());
    }
    return new Refreshed(added, removed, keptOut, List.of());
  }
}

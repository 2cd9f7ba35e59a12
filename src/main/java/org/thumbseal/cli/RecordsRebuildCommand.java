package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.thumbseal.index.Records;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the index anew. */
@Command(
    name = "rebuild",
    description = {
      "Make the index anew from the results, in one step.",
      "Every document is read again. Told are those that were in the index and are gone, or are"
          + " another under the same name. Readers see the old index until the new one is done."
    },
    mixinStandardHelpOptions = true)
final class RecordsRebuildCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private RecordsOptions options = new RecordsOptions();

  @Parameters(arity = "0..*", paramLabel = "DIR", description = "further results directories")
  private List<Path> more = List.of();

  @Override
  public Integer call() {
    return new RecordsWork(spec, options, more).run(Records::rebuild);
  }
}

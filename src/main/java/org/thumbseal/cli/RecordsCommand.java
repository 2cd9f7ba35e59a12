package org.thumbseal.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Keeps the records index. */
@Command(
    name = "records",
    description = {
      "Keep the records index: what the sealed results say, in a database.",
      "It is made of the results, never the other way round, and can be made anew at any time. Only"
          + " documents with a good seal by a trusted key go in."
    },
    mixinStandardHelpOptions = true,
    subcommands = {RecordsRebuildCommand.class, RecordsAddCommand.class, RecordsShowCommand.class})
public final class RecordsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    throw new ParameterException(
        spec.commandLine(), "say what to do: records rebuild, add or show");
  }
}

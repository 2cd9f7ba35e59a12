package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.grade.Criteria;
import org.thumbseal.json.CriteriaFile;
import org.thumbseal.json.CriteriaTree;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.Printable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints criteria as a file. */
@Command(
    name = "criteria",
    description = {
      "Print the default criteria as a file to edit, or check a file and print what is in force.",
      "Two settings have no default and are left out: jar (\"2 L\", \"500 mL\") and ratedSpeed"
          + " (\"30 L/min\", \"1.8 m3/h\")."
    },
    mixinStandardHelpOptions = true)
public final class CriteriaCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "a criteria file to check; what it leaves out is printed with its default")
  private @Nullable Path file;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    out.println(Printable.json(CriteriaTree.text(file == null ? Criteria.DEFAULT : read(file))));
    out.flush();
    return ExitCode.GOOD;
  }

  /** The criteria in a file; a mistake in it ends the command. */
  static Criteria read(Path file) {
    try {
      return CriteriaFile.read(file);
    } catch (JsonRefusedException e) {
      throw Failure.usage("criteria " + file + ": " + e.getMessage());
    }
  }
}

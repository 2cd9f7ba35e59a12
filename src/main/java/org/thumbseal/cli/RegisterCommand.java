package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisterFile;
import org.thumbseal.register.RegisterRefused;
import org.thumbseal.register.RegisterTemplate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what was understood of a register, or all that is wrong in it. */
@Command(
    name = "register",
    mixinStandardHelpOptions = true,
    description = {
      "Check a list of pumps kept in a spreadsheet (CSV), and say what was understood.",
      "Every mistake is named by row and column, one a line; a file with one is not used at all."
    })
final class RegisterCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "the register, as CSV UTF-8")
  private @Nullable Path file;

  @Option(names = "--json", description = "one JSON object instead of a table")
  private boolean json;

  @Option(names = "--template", description = "print a register to begin with")
  private boolean template;

  @Override
  public Integer call() {
    Path given = file;
    if (template == (given != null)) {
      throw Failure.usage("name the register to check, or --template for one to begin with");
    }
    print(given == null ? RegisterTemplate.lines() : understood(given));
    return ExitCode.GOOD;
  }

  private void print(List<String> lines) {
    PrintWriter out = spec.commandLine().getOut();
    lines.forEach(out::println);
    out.flush();
  }

  private List<String> understood(Path given) {
    RegisterWarnings said = new RegisterWarnings(given, spec.commandLine().getErr());
    try {
      Register register = RegisterFile.read(given, RegisterOption.today(HostClock.system()));
      said.warn(register);
      return json
          ? List.of(Printable.json(Canonical.text(RegisterJson.of(register))))
          : RegisterTable.lines(register);
    } catch (RegisterRefused e) {
      throw said.refused(e);
    }
  }
}

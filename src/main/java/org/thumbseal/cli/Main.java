package org.thumbseal.cli;

import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.thumbseal.json.Printable;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The program: a function from arguments and streams to an exit code. */
public final class Main {
  private Main() {}

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    int code = run(args, new Streams(System.in, System.out, System.err, Terminal.system()));
    if (code != ExitCode.GOOD) {
      System.exit(code);
    }
  }

  /** Runs one command; never throws for a user's mistake. */
  static int run(String[] args, Streams streams) {
    CommandLine line = commandLine(streams, args);
    int code = execute(line, args);
    if (isBroken(line.getOut(), streams.out())) {
      say(line, "standard output was closed before all was written to it");
      code = Math.max(code, ExitCode.MACHINE);
    }
    line.getErr().flush();
    return code;
  }

  private static int execute(CommandLine line, String[] args) {
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      say(line, "out of memory; give Java more with -Xmx, or name fewer files");
      return ExitCode.MACHINE;
    }
  }

  /** With the commands that such arguments can be about; without any, with all. */
  static CommandLine commandLine(Streams streams, String... args) {
    Commands commands = new Commands(streams);
    CommandLine line = new CommandLine(new ThumbsealCommand(), commands);
    for (String name : CommandNames.wanted(args)) {
      line.addSubcommand(name, new CommandLine(CommandNames.type(name), commands));
    }
    line.setOut(writer(streams.out()));
    line.setErr(writer(streams.err()));
    line.setParameterExceptionHandler(Main::wrongUsage);
    line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, command));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    // An asset or a file may be called @something; no argument is a file of more arguments.
    line.setExpandAtFiles(false);
    NumberConverters.register(line);
    return line;
  }

  /** Neither a print writer nor a print stream says it without being asked; asking flushes. */
  private static boolean isBroken(PrintWriter writer, OutputStream under) {
    return writer.checkError() || (under instanceof PrintStream print && print.checkError());
  }

  private static PrintWriter writer(OutputStream stream) {
    return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
  }

  private static int wrongUsage(ParameterException e, String[] args) {
    CommandLine command = e.getCommandLine();
    String said =
        Printable.line(isNoCommand(e) ? noCommand(e, args) : String.valueOf(e.getMessage()));
    say(command, said + " (see: " + command.getCommandSpec().qualifiedName() + " --help)");
    return ExitCode.USAGE;
  }

  private static boolean isNoCommand(ParameterException e) {
    return e instanceof UnmatchedArgumentException unmatched
        && !unmatched.isUnknownOption()
        && e.getCommandLine().getParent() == null;
  }

  private static String noCommand(ParameterException e, String[] args) {
    var commands = e.getCommandLine().getSubcommands().keySet();
    return "no command '" + args[0] + "'; there are " + String.join(", ", commands);
  }

  private static int failed(Exception e, CommandLine command) {
    if (e instanceof Failure failure) {
      say(command, Printable.line(String.valueOf(failure.getMessage())));
      return failure.exitCode();
    }
    say(command, "an error of this program, please report it: " + Printable.line(e.toString()));
    if (Boolean.getBoolean("thumbseal.trace")) {
      e.printStackTrace(command.getErr());
    }
    return ExitCode.MACHINE;
  }

  private static void say(CommandLine command, String message) {
    command.getErr().println("thumbseal: " + message);
  }
}

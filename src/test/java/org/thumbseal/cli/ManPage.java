package org.thumbseal.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.record.Software;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The manual page of one command, out of what the command says about itself. */
final class ManPage {
  private final CommandSpec command;
  private final Roff roff = new Roff();

  private ManPage(CommandSpec command) {
    this.command = command;
  }

  /**
   * The page of a command in the form of man(7).
   *
   * @param date of the program, as its top shows it
   */
  static String of(CommandLine line, String date) {
    ManPage page = new ManPage(line.getCommandSpec());
    page.write(date);
    return page.roff.toString();
  }

  /** {@code thumbseal-key-new} of {@code thumbseal key new}. */
  static String name(CommandLine line) {
    return line.getCommandSpec().qualifiedName("-");
  }

  /** The commands below this one that have a page. */
  static Stream<CommandLine> below(CommandLine line) {
    return line.getSubcommands().values().stream()
        .filter(each -> !(each.getCommandSpec().userObject() instanceof HelpCommand))
        .filter(each -> !each.getCommandSpec().usageMessage().hidden())
        .distinct();
  }

  private void write(String date) {
    List<String> said = lines(command.usageMessage().description());
    roff.title(name(command.commandLine()), date, Software.NAME + " " + Software.VERSION);
    roff.heading("Name");
    roff.plain(name(command.commandLine()) + " - " + said.get(0));
    roff.heading("Synopsis");
    roff.bold(command.qualifiedName());
    roff.plain(synopsis());
    roff.heading("Description");
    said.forEach(roff::paragraph);
    arguments();
    options();
    commands();
    footer(command);
    ManPageEnds.write(roff, command);
  }

  private String synopsis() {
    String whole = new Help(command, Help.Ansi.OFF).synopsis(0);
    return whole.replaceAll("\\s+", " ").replaceFirst(command.qualifiedName(), "").strip();
  }

  private void arguments() {
    List<PositionalParamSpec> shown =
        command.positionalParameters().stream().filter(each -> !each.hidden()).toList();
    if (!shown.isEmpty()) {
      roff.heading("Arguments");
      shown.forEach(each -> entry(each.paramLabel(), each.description()));
    }
  }

  private void options() {
    roff.heading("Options");
    command.options().stream()
        .filter(each -> !each.hidden())
        .forEach(each -> entry(names(each), each.description()));
  }

  private static String names(OptionSpec option) {
    String names = String.join(", ", option.names());
    return option.arity().max() == 0 ? names : names + "=" + option.paramLabel();
  }

  private void commands() {
    if (below(command.commandLine()).findAny().isPresent()) {
      roff.heading("Commands");
      below(command.commandLine())
          .map(CommandLine::getCommandSpec)
          .forEach(each -> entry(each.name(), each.usageMessage().description()));
    }
  }

  private void entry(String name, String[] description) {
    roff.term(name);
    roff.plain(String.join(" ", lines(description)));
  }

  private void footer(CommandSpec of) {
    String heading = format(of.usageMessage().footerHeading()).replace(":", "").strip();
    if (of.usageMessage().footer().length > 0) {
      roff.heading(heading.isEmpty() ? "More" : heading);
      roff.asTyped(lines(of.usageMessage().footer()));
    }
    if (of.parent() != null) {
      footer(of.parent());
    }
  }

  private static List<String> lines(String[] said) {
    return Arrays.stream(said)
        .map(ManPage::format)
        .flatMap(String::lines)
        .collect(Collectors.toList());
  }

  /** As picocli shows it: with %n and %% resolved. */
  private static String format(String text) {
    return String.format(Locale.ROOT, text);
  }
}

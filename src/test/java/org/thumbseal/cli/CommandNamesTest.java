package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;

class CommandNamesTest {
  static List<String> all() {
    return CommandNames.ALL;
  }

  @ParameterizedTest
  @MethodSource("all")
  void aCommandHasOneNameWhereverItIsWritten(String name) {
    Command command = CommandNames.type(name).getAnnotation(Command.class);

    assertThat(command.name()).isEqualTo(name);
    assertThat(command.aliases()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("all")
  void itsHelpIsTheSameWhetherOrNotTheOthersAreThere(String name) {
    assertThat(help(program(name), name)).isEqualTo(help(program(), name));
  }

  @Test
  void onlyTheOneThatIsNamedIsMade() {
    assertThat(program("due", "history").getSubcommands()).containsOnlyKeys("due");
  }

  @Test
  void allAreThereForHelpAndForANameThatIsNone() {
    assertThat(program("help", "due").getSubcommands().keySet()).containsAll(CommandNames.ALL);
    assertThat(program("dou").getSubcommands().keySet()).containsAll(CommandNames.ALL);
    assertThat(program("--version").getSubcommands().keySet()).containsAll(CommandNames.ALL);
    assertThat(program().getSubcommands().keySet()).containsExactlyElementsOf(CommandNames.ALL);
  }

  private static String help(CommandLine program, String name) {
    return Objects.requireNonNull(program.getSubcommands().get(name)).getUsageMessage();
  }

  private static CommandLine program(String... args) {
    return PackageFiles.program(args);
  }
}

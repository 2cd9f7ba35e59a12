package org.thumbseal.cli;

import org.thumbseal.record.Software;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program as a whole; it does nothing without a command. */
@Command(
    name = "thumbseal",
    mixinStandardHelpOptions = true,
    versionProvider = ThumbsealCommand.Version.class,
    description =
        "Occlusion tests of electric suction pumps, from a pressure sensor to a sealed verdict.",
    footerHeading = "%nExit codes:%n",
    footer = {
      "  0  good",
      "  1  it ran, and something did not pass, verify or is due",
      "  2  wrong usage or unreadable input",
      "  3  the machine failed it: port, disk, permission"
    })
final class ThumbsealCommand implements Runnable {
  @Spec private CommandSpec spec;

  ThumbsealCommand() {
    spec = CommandSpec.create();
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "say what to do: demo, watch, replay, verify, ...");
  }

  /** Name and version. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {Software.NAME + " " + Software.VERSION};
    }
  }
}

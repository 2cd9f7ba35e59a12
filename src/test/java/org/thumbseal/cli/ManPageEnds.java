package org.thumbseal.cli;

import java.util.LinkedHashSet;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;

/**
 * What commands do not say about themselves: environment and files, and which page to read next.
 */
final class ManPageEnds {
  private ManPageEnds() {}

  static void write(Roff roff, CommandSpec command) {
    if (command.parent() == null) {
      environment(roff);
      files(roff);
    }
    roff.heading("See also");
    roff.plain(String.join(", ", pages(command)));
  }

  private static void environment(Roff roff) {
    roff.heading("Environment");
    entry(roff, "THUMBSEAL_KEY", "the file with the key that seals, where no option names one");
    entry(
        roff,
        "THUMBSEAL_PASSPHRASE_FILE",
        "a file with the passphrase of the key, where no option names one");
    entry(roff, "NO_COLOR", "set to anything, it forbids colour");
    entry(
        roff, "JAVA_HOME", "the folder of the Java to use; else the first of version 17 or newer");
    entry(roff, "JAVA_OPTS", "options for Java, as -Xmx1g where memory runs short (256 MiB else)");
  }

  private static void files(Roff roff) {
    roff.heading("Files of the service");
    entry(roff, "/etc/default/thumbseal", "which ports, and all else that it is started with");
    entry(roff, "/var/lib/thumbseal/results", "sealed results and recordings");
    entry(roff, "/var/lib/thumbseal/keys", "the key that seals; keep a copy elsewhere");
  }

  private static void entry(Roff roff, String name, String text) {
    roff.term(name);
    roff.plain(text);
  }

  private static Set<String> pages(CommandSpec command) {
    Set<String> pages = new LinkedHashSet<>();
    if (command.parent() != null) {
      pages.add(ManPage.name(command.parent().commandLine()) + "(1)");
    }
    ManPage.below(command.commandLine()).forEach(each -> pages.add(ManPage.name(each) + "(1)"));
    pages.add("systemctl(1)");
    return pages;
  }
}

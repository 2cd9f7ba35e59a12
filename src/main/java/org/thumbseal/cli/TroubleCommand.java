package org.thumbseal.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.guide.Outcome;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.InspectionTree;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Looks for a fault by questions, and seals the answers. */
@Command(
    name = "trouble",
    mixinStandardHelpOptions = true,
    description = {
      "Find what is wrong with a pump by questions, one at a time, and seal the answers.",
      "For what no curve shows: it does not start; it runs and does not suck; it is weak. Cautions"
          + " come first, and the guide goes on when each is acknowledged. Common practice, no"
          + " published source: local rules decide, and who is qualified.",
      "Exit code 1: it was not gone through to its end, and nothing was recorded."
    })
final class TroubleCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private ArchiveOptions archiving = new ArchiveOptions();

  @Parameters(paramLabel = "ASSET", description = "the pump")
  private String asset = "";

  @Option(names = "--by", required = true, paramLabel = "NAME", description = "who answers")
  private String by = "";

  @Option(names = "--note", paramLabel = "TEXT", description = "a remark")
  private @Nullable String note;

  @Option(
      names = "--answers",
      split = ",",
      paramLabel = "yes,no,...",
      description = "the first answers, in order; what is left is asked")
  private List<String> answers = List.of();

  @Option(names = "--json", description = "print the sealed document and nothing else")
  private boolean json;

  private final Streams streams;
  private final HostClock clock;

  TroubleCommand(Streams streams) {
    this(streams, HostClock.system());
  }

  TroubleCommand(Streams streams, HostClock clock) {
    this.streams = streams;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    SealedGuide sealed =
        new SealedGuide(
            SaidText.required("ASSET", asset, SaidText.NAME),
            SaidText.required("--by", by, SaidText.NAME),
            SaidText.optional("--note", note, SaidText.REMARK));
    TroubleDialogue dialogue = new TroubleDialogue(this::say);
    dialogue.take(answers);
    asked(dialogue);
    Optional<Outcome> outcome = dialogue.walk().outcome().map(o -> o.of(sealed.asset()));
    if (outcome.isEmpty()) {
      unfinished(dialogue);
      return ExitCode.NOT_PASSED;
    }
    store(sealed, dialogue, outcome.get());
    return ExitCode.GOOD;
  }

  /** Asks what is left; whoever ends the program in the middle is told what was answered. */
  private void asked(TroubleDialogue dialogue) {
    if (dialogue.walk().outcome().isPresent()) {
      return;
    }
    Thread hook = new Thread(() -> interrupted(dialogue), "unfinished");
    Runtime.getRuntime().addShutdownHook(hook);
    try {
      dialogue.ask(new BufferedReader(new InputStreamReader(streams.in(), StandardCharsets.UTF_8)));
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IOException e) {
      Runtime.getRuntime().removeShutdownHook(hook);
      throw Failure.machine("the answers cannot be read: " + e.getMessage());
    } catch (IllegalStateException e) {
      throw Failure.notPassed("interrupted");
    }
  }

  /** A process that ends by a signal has the signal as its exit code unless it is halted. */
  private void interrupted(TroubleDialogue dialogue) {
    try {
      unfinished(dialogue);
    } finally {
      Runtime.getRuntime().halt(ExitCode.NOT_PASSED);
    }
  }

  private void unfinished(TroubleDialogue dialogue) {
    String so = dialogue.answers();
    String how = so.isEmpty() ? "" : "; go on with --answers " + so;
    PrintWriter err = spec.commandLine().getErr();
    err.println("thumbseal: the guide was not gone through to its end, nothing was recorded" + how);
    err.flush();
  }

  private void store(SealedGuide sealed, TroubleDialogue dialogue, Outcome outcome) {
    say("");
    say("Likely: " + outcome.cause());
    say("Next: " + outcome.next());
    say("Who: " + outcome.who().words() + "; local rules decide.");
    Path directory = archiving.results().orElse(Path.of("results"));
    Archive archive = archiving.open(directory, spec.commandLine().getErr());
    try {
      tell(archive.store(InspectionTree.of(sealed.of(dialogue.walk(), outcome, clock))));
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    } finally {
      archiving.close(archive);
    }
  }

  private void tell(StoredResult stored) {
    if (json) {
      spec.commandLine().getOut().println(Canonical.text(stored.sealed()));
      return;
    }
    say(stored.added() ? "Recorded:" : "Was recorded already:");
    say("  " + stored.document());
    say("The guide finds no pump fit for use: a test that passes comes first.");
  }

  /** Where the answer is a document, what is asked stands beside it. */
  private void say(String line) {
    PrintWriter to = json ? spec.commandLine().getErr() : spec.commandLine().getOut();
    to.println(Printable.line(line));
    to.flush();
  }
}

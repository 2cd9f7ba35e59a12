package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.Referral.Fact;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.report.ReferralPage;
import org.thumbseal.report.ReferralText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The sheet that goes with a pump to the qualified technician. */
@Command(
    name = "refer",
    mixinStandardHelpOptions = true,
    description = {
      "Make the sheet for the qualified technician: what was tested, looked at, replaced, tried,"
          + " and what was not, from the sealed records alone.",
      "With -o one page of A4, to be printed or sent. Decontaminate the pump before it is handed"
          + " over; it is not to be used until a qualified person has released it. Local rules"
          + " decide."
    })
final class ReferCommand implements Callable<Integer> {
  /** What the sheet has room for. */
  private static final int LONGEST_COMPLAINT = 300;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "ASSET", description = "the pump")
  private String asset = "";

  @Option(
      names = "--complaint",
      paramLabel = "TEXT",
      description = "what is wrong, in your words; left out, there is a line to write on")
  private @Nullable String complaint;

  @Option(names = "--json", description = "one JSON object instead")
  private boolean json;

  @Mixin private HistoryOptions options = new HistoryOptions();

  @Override
  public Integer call() {
    Optional<String> said = SaidText.optional("--complaint", complaint, LONGEST_COMPLAINT);
    options.output().ifPresent(ReferCommand::requireFolder);
    PrintWriter err = spec.commandLine().getErr();
    Optional<RegisteredAsset> listed = options.register(err).flatMap(r -> r.of(asset));
    Referral.Subject subject =
        new Referral.Subject(
            asset,
            listed.map(ReferCommand::facts).orElse(List.of()),
            said,
            options.today(),
            options.zone());
    QuotedFiles files = new QuotedFiles(options.records().results());
    ReferralRecord.Drawn drawn =
        options.records().ask(err, open -> new ReferralRecord(open, files).of(subject));
    if (drawn.isEmpty()) {
      throw nothing(listed.isPresent());
    }
    show(drawn);
    return ExitCode.GOOD;
  }

  /** A sheet that is made in a hurry is not to end up in a folder that a slip of the pen made. */
  private static void requireFolder(Path file) {
    Path folder = file.getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw Failure.usage(folder + ": there is no such folder; name another -o FILE.html");
    }
  }

  private Failure nothing(boolean listed) {
    String known = listed ? "it is in the list of pumps, but " : "";
    return Failure.usage(
        asset
            + ": "
            + known
            + "no sealed record is of this pump; test it, or go through 'thumbseal trouble', or"
            + " see its name with 'thumbseal fleet'");
  }

  private static List<Fact> facts(RegisteredAsset asset) {
    List<Fact> facts = new ArrayList<>();
    RegisteredAsset.Label label = asset.label();
    label.description().ifPresent(text -> facts.add(new Fact("description", text)));
    label.location().ifPresent(text -> facts.add(new Fact("location", text)));
    label.serial().ifPresent(text -> facts.add(new Fact("serial", text)));
    asset.inService().ifPresent(day -> facts.add(new Fact("in_service", day.toString())));
    return facts;
  }

  private void show(ReferralRecord.Drawn drawn) {
    PrintWriter out = spec.commandLine().getOut();
    if (options.output().isPresent()) {
      options.write(
          options.output().get(), ReferralPage.html(drawn.referral(), drawn.reports()), out);
    } else if (json) {
      out.println(Printable.json(Canonical.text(ReferralJson.of(drawn.referral()))));
    } else {
      ReferralText.lines(drawn.referral()).forEach(l -> out.println(Printable.line(l)));
    }
    out.flush();
  }
}

package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Inspection.Done;
import org.thumbseal.care.Inspection.More;
import org.thumbseal.care.Inspection.Said;
import org.thumbseal.care.Work;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.InspectionTree;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Seals what a person says was done to a pump. */
@Command(
    name = "done",
    mixinStandardHelpOptions = true,
    description = {
      "Record what was done to a pump, or happened to it, as a sealed document.",
      "A test needs none of this: its result is the record. An inspection by a qualified technician"
          + " covers electrical safety, which no pressure sensor sees; the law and the hospital say"
          + " who is qualified. For looking for a fault: thumbseal trouble."
    })
final class DoneCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private ArchiveOptions archiving = new ArchiveOptions();

  @Parameters(index = "0", paramLabel = "ASSET", description = "the pump")
  private String asset = "";

  @Parameters(
      index = "1",
      paramLabel = "WORK",
      description =
          "yearly-inspection, sterilisation (of jar and tubing), infectious-case (was used on an"
              + " infectious patient) or repair (came back from it)")
  private String work = "";

  @Option(names = "--by", required = true, paramLabel = "NAME", description = "who did it")
  private String by = "";

  @Option(names = "--on", paramLabel = "DATE", description = "the day, 2026-03-02; default: today")
  private @Nullable String on;

  @Option(names = "--note", paramLabel = "TEXT", description = "a remark")
  private @Nullable String note;

  @Option(names = "--not-in-order", description = "the pump was found unfit for use")
  private boolean notInOrder;

  @Option(names = "--json", description = "print the sealed document and nothing else")
  private boolean json;

  private final HostClock clock;

  DoneCommand() {
    this(HostClock.system());
  }

  DoneCommand(HostClock clock) {
    this.clock = clock;
  }

  @Override
  public Integer call() {
    Said said = said();
    Path directory =
        archiving
            .results()
            .orElseThrow(() -> Failure.usage("say where the results are: --results DIR"));
    Archive archive = archiving.open(directory, spec.commandLine().getErr());
    try {
      tell(archive.store(InspectionTree.of(inspection(said))), said);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    } finally {
      archiving.close(archive);
    }
    return ExitCode.GOOD;
  }

  private Inspection inspection(Said said) {
    String digest = Sha256.hex(Canonical.bytes(InspectionTree.said(said)));
    return new Inspection(ResultId.of(digest, 1), said, CalibrationTree.toMillis(clock.wall()));
  }

  private Said said() {
    Done done = new Done(work(), SaidDate.notAfterToday("--on", on, clock), !notInOrder);
    return new Said(
        SaidText.required("ASSET", asset, SaidText.NAME),
        done,
        SaidText.required("--by", by, SaidText.NAME),
        new More(SaidText.optional("--note", note, SaidText.REMARK), More.NONE.answers()));
  }

  private Work work() {
    return Work.of(work)
        .filter(Work::isSaid)
        .orElseThrow(
            () ->
                Failure.usage(
                    "there is no work '"
                        + Printable.line(work)
                        + "'; say one of "
                        + String.join(", ", Work.saidCodes())));
  }

  private void tell(StoredResult stored, Said said) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(Canonical.text(stored.sealed()));
      return;
    }
    String how = stored.added() ? "recorded" : "was recorded already";
    String found = said.done().inOrder() ? "" : ", not in order";
    out.println(
        Printable.line(
                said.asset() + ": " + said.done().work().code() + " on " + said.done().on() + found)
            + ": "
            + how);
    out.println("  " + Printable.line(stored.document().toString()));
    if (!said.done().inOrder()) {
      out.println("  It stays due. Take the pump out of use and label it.");
    }
  }
}

package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Corrections;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.SealedCorrection;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.archive.Verification;
import org.thumbseal.json.CalibrationReader;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.CorrectionReader;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.InspectionReader;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.LeakSearchTree;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.record.Standing;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ObjectNode;

/** Corrects a sealed result by a new document that names it. */
@Command(
    name = "amend",
    mixinStandardHelpOptions = true,
    description = {
      "Correct a sealed result, or what was sealed by 'done' or 'seek-leak': assign it to a pump, add a note, or"
          + " declare it void.",
      "The result stays as it is, and in its place. The correction is a sealed document of its own"
          + " beside it, and readers show the result as corrected, and by whom. A watch may run on"
          + " the same directory."
    })
final class AmendCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private AmendOptions said = new AmendOptions();
  @Mixin private KeyOption key = new KeyOption();
  @Mixin private PassphraseOption passphrase = new PassphraseOption();

  @Parameters(arity = "1", paramLabel = "RESULT", description = "file of the result, *.json")
  private Path file = Path.of("");

  @Mixin private TrustOption trust = new TrustOption();

  @Option(names = "--json", description = "print the sealed correction and nothing else")
  private boolean json;

  private final HostClock clock;

  AmendCommand() {
    this(HostClock.system());
  }

  AmendCommand(HostClock clock) {
    this.clock = clock;
  }

  @Override
  public Integer call() {
    Said what = said.said(clock.wall());
    ObjectNode result = read();
    Path directory =
        Archive.directoryOf(file)
            .orElseThrow(
                () ->
                    Failure.usage(
                        file
                            + ": lies in no result directory; name the file where it was stored,"
                            + " beside the others and head.json"));
    TrustStore trusted = trust.trusted(key.file());
    requireGood(trusted);
    correct(directory, trusted, result, what);
    return ExitCode.GOOD;
  }

  private ObjectNode read() {
    if (CaptureFile.isOne(file)) {
      throw Failure.usage(file + ": " + CaptureFile.insteadOfDocument(file));
    }
    try {
      ObjectNode document = JsonGate.read(file);
      String kind = kindFault(document);
      if (!kind.isEmpty()) {
        throw Failure.usage(file + ": " + kind);
      }
      return document;
    } catch (JsonRefusedException e) {
      throw Failure.usage(file + ": " + e.getMessage() + hint());
    }
  }

  private String hint() {
    return file.toString().endsWith(".log") ? "; name the document beside it, *.json" : "";
  }

  private static String kindFault(ObjectNode document) {
    if (CorrectionReader.isCorrection(document)) {
      String of = document.at("/corrects/file").asString("");
      return "is a correction itself; amend the result that it corrects, " + Printable.line(of);
    }
    if (CalibrationReader.isCalibration(document)) {
      return "is a calibration; calibrate the sensor again instead";
    }
    boolean result = document.path("kind").asString("").equals(ResultDocument.KIND);
    boolean known =
        result || InspectionReader.isInspection(document) || LeakSearchTree.isLeakSearch(document);
    return known ? "" : "is neither the result of a test nor a word about a pump";
  }

  /** What is not to be relied on is not to be corrected either. */
  private void requireGood(TrustStore trusted) {
    Outcome outcome = new Verification(trusted).file(file);
    if (outcome instanceof Outcome.Answered a && a.answer() != SealAnswer.TRUSTED_KEY) {
      boolean unknown = a.answer() == SealAnswer.UNKNOWN_KEY;
      String why = unknown ? " (" + a.signer() + "); name it with --trust if you know it" : "";
      throw Failure.notPassed(
          file
              + ": not amended: "
              + a.answer().text()
              + (a.remark().isEmpty() ? why : ": " + a.remark()));
    } else if (outcome instanceof Outcome.Unreadable u) {
      throw Failure.usage(file + ": " + u.reason());
    }
  }

  private void correct(Path directory, TrustStore trusted, ObjectNode result, Said what) {
    PrintWriter err = spec.commandLine().getErr();
    ArchiveOptions storing = new ArchiveOptions(key.file(), passphrase);
    Archive archive = storing.open(directory, trusted, err);
    try {
      Corrections known =
          Corrections.in(directory, trusted, line -> err.println("thumbseal: " + line));
      Correction correction = known.next(file, result, what);
      Standing now = correction.was();
      if (correction.appliedTo(now).equals(now)) {
        tellThere(known.of(result));
      } else {
        tell(archive.store(CorrectionTree.of(correction)), correction);
      }
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    } catch (JsonRefusedException e) {
      throw Failure.machine(directory + ": a correction vanished while it was read");
    } finally {
      storing.close(archive);
    }
  }

  /** What was said holds already: by the result itself, or by its last correction. */
  private void tellThere(List<SealedCorrection> corrections) throws JsonRefusedException {
    Optional<Path> last =
        corrections.stream()
            .filter(SealedCorrection::counts)
            .reduce((first, second) -> second)
            .map(SealedCorrection::file);
    if (json && last.isPresent()) {
      spec.commandLine().getOut().println(Canonical.text(JsonGate.read(last.get())));
    }
    String where =
        last.map(c -> "is there already, nothing was written; last correction: " + shown(c))
            .orElse("says so already; nothing was written");
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(file + ": " + where));
  }

  private void tell(StoredResult stored, Correction correction) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(Canonical.text(stored.sealed()));
    } else {
      String how = stored.added() ? ": corrected: " : ": is there already: ";
      out.println(Printable.line(file.toString()) + how + CorrectionText.change(correction));
      out.println("  " + Printable.line(shown(stored.document()).toString()));
    }
  }

  /** A path as the user would write it, who named the result from where they are. */
  private Path shown(Path path) {
    Path here = Path.of("").toAbsolutePath();
    return !file.isAbsolute() && path.startsWith(here) ? here.relativize(path) : path;
  }
}

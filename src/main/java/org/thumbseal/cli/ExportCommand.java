package org.thumbseal.cli;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.exchange.AssetFacts;
import org.thumbseal.exchange.CsvTable;
import org.thumbseal.exchange.Export;
import org.thumbseal.exchange.FhirBundle;
import org.thumbseal.exchange.FhirLines;
import org.thumbseal.exchange.JsonLines;
import org.thumbseal.exchange.Layout;
import org.thumbseal.exchange.LeftOut;
import org.thumbseal.exchange.ResultFiles;
import org.thumbseal.exchange.ResultReader;
import org.thumbseal.exchange.ResultTable;
import org.thumbseal.json.Printable;
import org.thumbseal.register.KeptRegister;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes results for other programs. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    description = {
      "Write results for another program: a table, lines of JSON, or FHIR.",
      "In the order of their beginning, corrections considered. Only what has a good seal by a"
          + " trusted key; what is left out is said. Exit code 1: something was left out."
    })
final class ExportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "RESULT|DIR",
      description = "sealed results, or directories of them, which are checked whole")
  private List<Path> paths = List.of();

  @Option(
      names = "--as",
      paramLabel = "FORM",
      converter = ExportForm.Converter.class,
      description = {
        "csv: a row a test; jsonl: an object a line; fhir: one Bundle (R4, transaction);"
            + " fhir-ndjson: a resource a line, for bulk imports. Default: csv"
      })
  private ExportForm form = ExportForm.CSV;

  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description =
          "headings of another program, for csv and jsonl: lines 'their heading = our column'")
  private Optional<Path> mapping = Optional.empty();

  @Option(
      names = "--unverified",
      description = "results without a trusted seal too; they are marked as what they are")
  private boolean unverified;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "where to write; default: standard output")
  private Optional<Path> output = Optional.empty();

  @Mixin private KeyOption key = new KeyOption();
  @Mixin private TrustOption trust = new TrustOption();
  @Mixin private RegisterOption register = new RegisterOption();

  private final Streams streams;

  ExportCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    ProgressLine progress =
        new ProgressLine(
            spec.commandLine().getErr(), StandardError.isSeenAt(streams.err()), System::nanoTime);
    Layout layout = layout(progress);
    LeftOut leftOut = new LeftOut(line -> say(line, progress));
    TrustStore trusted = trust.trusted(key.file());
    boolean[] faulty = {false};
    ResultFiles files =
        new ResultFiles(
            trusted,
            line -> {
              faulty[0] = true;
              say(line, progress);
            });
    ResultReader reader = new ResultReader(trusted, line -> say(line, progress));
    collect(files, reader, progress);
    Export export = new Export(reader, unverified, layout);
    new OutputFile(output, streams.out())
        .write(out -> export.run(files, table(layout, out), leftOut));
    return told(leftOut, faulty[0], progress);
  }

  private Integer told(LeftOut leftOut, boolean faulty, ProgressLine progress) {
    if (!leftOut.summary().isEmpty()) {
      say(leftOut.summary(), progress);
    }
    if (leftOut.isUnreadable()) {
      return ExitCode.USAGE;
    }
    return leftOut.isLacking() || faulty ? ExitCode.NOT_PASSED : ExitCode.GOOD;
  }

  private Layout layout(ProgressLine progress) {
    if (mapping.isEmpty()) {
      return Layout.OWN;
    }
    if (form.isFhir()) {
      throw Failure.usage("--mapping is for csv and jsonl; FHIR has names of its own");
    }
    Layout layout = MappingFile.read(mapping.get(), line -> say(line, progress));
    if (unverified && !layout.showsSeal()) {
      throw Failure.usage(
          mapping.get() + ": has no column 'seal', and --unverified would not be seen; add one");
    }
    return layout;
  }

  private void collect(ResultFiles files, ResultReader reader, ProgressLine progress) {
    try {
      for (Path path : paths) {
        if (!Files.exists(path)) {
          throw Failure.usage(path + ": no such file or folder");
        }
        files.add(path, progress::show);
      }
      progress.clear();
      reader.correctedBy(files.directories());
    } catch (ArchiveException e) {
      throw Failure.usage(String.valueOf(e.getMessage()));
    }
  }

  private ResultTable table(Layout layout, Writer out) throws IOException {
    return switch (form) {
      case CSV -> new CsvTable(layout, out);
      case JSONL -> new JsonLines(layout, out);
      case FHIR -> new FhirBundle(register(), out);
      case FHIR_NDJSON -> new FhirLines(register(), out);
    };
  }

  /** Description, place and serial number of pumps, for a Device of FHIR. */
  private Function<String, AssetFacts> register() {
    Optional<Register> kept =
        register.read(Optional.empty(), spec.commandLine().getErr()).map(KeptRegister::register);
    return asset ->
        kept.flatMap(known -> known.of(asset)).map(ExportCommand::facts).orElse(AssetFacts.NONE);
  }

  private static AssetFacts facts(RegisteredAsset asset) {
    RegisteredAsset.Label label = asset.label();
    return new AssetFacts(label.description(), label.location(), label.serial());
  }

  private void say(String message, ProgressLine progress) {
    progress.clear();
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(message));
  }
}

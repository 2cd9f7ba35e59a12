package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.thumbseal.json.SchemaDocument;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Prints a JSON Schema. */
@Command(
    name = "schema",
    description =
        "Print the JSON Schema of results, calibrations, corrections, inspections, leak searches, or the head of a"
            + " ledger.",
    mixinStandardHelpOptions = true)
public final class SchemaCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "0..1",
      paramLabel = "WHICH",
      defaultValue = "result",
      converter = Name.class,
      description =
          "'result' (the default), 'calibration', 'correction', 'inspection', 'leak-search' or"
              + " 'head'.")
  private SchemaDocument which = SchemaDocument.RESULT;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    out.print(which.text());
    out.flush();
    return ExitCode.GOOD;
  }

  /** Names of schemas as they are typed. */
  static final class Name implements ITypeConverter<SchemaDocument> {
    @Override
    public SchemaDocument convert(String text) {
      return switch (text) {
        case "result" -> SchemaDocument.RESULT;
        case "calibration" -> SchemaDocument.CALIBRATION;
        case "correction" -> SchemaDocument.CORRECTION;
        case "inspection" -> SchemaDocument.INSPECTION;
        case "leak-search" -> SchemaDocument.LEAK_SEARCH;
        case "head" -> SchemaDocument.HEAD;
        default ->
            throw new TypeConversionException(
                "there is no schema '"
                    + text
                    + "': result, calibration, correction, inspection, leak-search or head");
      };
    }
  }
}

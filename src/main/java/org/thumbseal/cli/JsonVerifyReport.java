package org.thumbseal.cli;

import java.io.PrintWriter;
import org.thumbseal.archive.ChainSummary;
import org.thumbseal.archive.DirectorySummary;
import org.thumbseal.archive.Outcome;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import tools.jackson.core.json.JsonWriteFeature;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * For programs: a line of JSON for each document and each fault of a directory, and one on the
 * directory ({@code directory} in the place of {@code file}) at its end.
 */
final class JsonVerifyReport extends VerifyReport {
  /** Names of files may hold anything; in ASCII nothing of it reaches a terminal. */
  private static final ObjectWriter WRITER =
      Json.mapper().writer().with(JsonWriteFeature.ESCAPE_NON_ASCII);

  private final PrintWriter out;

  JsonVerifyReport(PrintWriter out, PrintWriter err) {
    super(err);
    this.out = out;
  }

  @Override
  void show(Outcome outcome) {
    ObjectNode line = Json.object().put("file", outcome.file().toString());
    if (outcome instanceof Outcome.Answered answered) {
      line.put("answer", answered.answer().code());
      put(line, "signer", answered.signer());
      put(line, "remark", answered.remark());
    } else if (outcome instanceof Outcome.Unreadable unreadable) {
      line.put("answer", "unreadable").put("remark", unreadable.reason());
    } else if (outcome instanceof Outcome.Remarked remarked) {
      line.put("answer", "remark").put("remark", remarked.remark());
    }
    out.println(Printable.json(WRITER.writeValueAsString(line)));
  }

  @Override
  void showMember(Outcome outcome) {
    show(outcome);
  }

  @Override
  void showCorrected(Outcome.Corrected corrected) {
    out.println(WRITER.writeValueAsString(CorrectionText.tree(corrected)));
  }

  @Override
  void directory(DirectorySummary summary) {
    ObjectNode line =
        Json.object()
            .put("directory", summary.directory().toString())
            .put("documents", summary.documents())
            .put("captures", summary.captures())
            .put("withoutCapture", summary.withoutCapture());
    ArrayNode chains = line.putArray("chains");
    summary.chains().forEach(chain -> put(chains.addObject(), chain));
    out.println(Printable.json(WRITER.writeValueAsString(line)));
  }

  private static void put(ObjectNode line, ChainSummary chain) {
    line.put("kid", chain.kid()).put("signer", chain.signer()).put("key", chain.answer().code());
    line.put("documents", chain.documents());
    chain
        .period()
        .ifPresent(p -> line.put("from", p.from().toString()).put("to", p.to().toString()));
  }

  private static void put(ObjectNode line, String name, String value) {
    if (!value.isEmpty()) {
      line.put(name, value);
    }
  }
}

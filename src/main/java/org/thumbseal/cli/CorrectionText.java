package org.thumbseal.cli;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.SealedCorrection;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Standing;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Corrections as people and programs are told of them. */
final class CorrectionText {
  private CorrectionText() {}

  /** A line for each correction of a result, and what stands where any of them counts. */
  static List<String> lines(Outcome.Corrected corrected) {
    String file = Printable.line(corrected.file().toString()) + ": ";
    Stream<String> each = corrected.corrections().stream().map(CorrectionText::line);
    boolean changed = corrected.corrections().stream().anyMatch(SealedCorrection::counts);
    Stream<String> now = changed ? Stream.of(now(corrected.standing())) : Stream.empty();
    return Stream.concat(each, now).map(line -> file + line).toList();
  }

  private static String now(Standing standing) {
    String asset = "asset " + standing.asset().map(Printable::line).orElse("unassigned");
    String note = standing.note().map(n -> "; note: " + Printable.line(n)).orElse("");
    String gone = standing.voided().map(v -> "VOID (" + Printable.line(v) + "); ").orElse("");
    return "stands now: " + gone + asset + note;
  }

  /** Each part is cut on its own, so that a long name cannot push the change out of sight. */
  static String line(SealedCorrection sealed) {
    String who =
        Stream.of(
                Optional.of(sealed.signer()),
                sealed.correction().said().by(),
                Optional.of(date(sealed.correction())))
            .flatMap(Optional::stream)
            .map(Printable::line)
            .collect(Collectors.joining(", "));
    return sealed.counts()
        ? "corrected by " + who + ": " + change(sealed.correction())
        : "a correction by an unknown key changes nothing ("
            + who
            + "): "
            + change(sealed.correction());
  }

  /** What is different: {@code asset unassigned -> SP-014}, fit to be printed. */
  static String change(Correction correction) {
    Change change = correction.said().change();
    List<String> parts = new ArrayList<>();
    change
        .asset()
        .ifPresent(
            id ->
                parts.add(
                    "asset "
                        + Printable.line(correction.was().asset().orElse("unassigned"))
                        + " -> "
                        + Printable.line(id)));
    change.note().ifPresent(text -> parts.add("note: " + Printable.line(text)));
    change.voided().ifPresent(gone -> parts.add(gone ? "VOID" : "counts again"));
    String all = String.join("; ", parts);
    return correction.said().reason().map(why -> all + ": " + Printable.line(why)).orElse(all);
  }

  /** The same for programs. */
  static ObjectNode tree(Outcome.Corrected corrected) {
    ObjectNode tree = Json.object().put("file", corrected.file().toString());
    ArrayNode corrections = tree.putArray("corrections");
    corrected.corrections().forEach(c -> corrections.add(tree(c)));
    tree.set("standing", CorrectionTree.of(corrected.standing()));
    return tree;
  }

  private static ObjectNode tree(SealedCorrection sealed) {
    ObjectNode tree = Json.object().put("file", sealed.file().toString());
    tree.put("answer", sealed.answer().code()).put("signer", sealed.signer());
    ObjectNode whole = CorrectionTree.of(sealed.correction());
    for (String member : List.of("number", "correctedAt", "by", "change", "was", "reason")) {
      if (whole.has(member)) {
        tree.set(member, whole.get(member));
      }
    }
    return tree;
  }

  private static String date(Correction correction) {
    return LocalDate.ofInstant(correction.said().at(), ZoneOffset.UTC).toString();
  }
}

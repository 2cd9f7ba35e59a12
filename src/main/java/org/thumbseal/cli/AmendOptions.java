package org.thumbseal.cli;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import picocli.CommandLine.Option;

/** What a person says about a result that was sealed. */
final class AmendOptions {
  @Option(
      names = "--asset",
      paramLabel = "ID",
      description = "the pump that was tested is this one")
  private @Nullable String asset;

  @Option(
      names = "--note",
      paramLabel = "TEXT",
      description = "a remark, in the place of an earlier one; it counts with the result as before")
  private @Nullable String note;

  @Option(names = "--void", description = "the result does not count; needs --reason")
  private boolean voided;

  @Option(names = "--unvoid", description = "it counts again; needs --reason")
  private boolean unvoided;

  @Option(names = "--reason", paramLabel = "TEXT", description = "why")
  private @Nullable String reason;

  @Option(names = "--by", paramLabel = "NAME", description = "who says so")
  private @Nullable String by;

  /** All that was said, checked. */
  Said said(Instant now) {
    Change change =
        new Change(
            SaidText.optional("--asset", asset, SaidText.NAME),
            SaidText.optional("--note", note, SaidText.REMARK),
            counting());
    Optional<String> why = SaidText.optional("--reason", reason, SaidText.REMARK);
    requireWhole(change, why.isPresent());
    return new Said(
        change, why, SaidText.optional("--by", by, SaidText.NAME), CalibrationTree.toMillis(now));
  }

  private Optional<Boolean> counting() {
    if (voided && unvoided) {
      throw Failure.usage("give --void or --unvoid, not both");
    }
    return voided || unvoided ? Optional.of(voided) : Optional.empty();
  }

  private static void requireWhole(Change change, boolean reasoned) {
    if (change.asset().isEmpty() && change.note().isEmpty() && change.voided().isEmpty()) {
      throw Failure.usage(
          "say what is wrong with the result: --asset ID, --note TEXT, or --void --reason TEXT");
    }
    if (change.voided().isPresent() && !reasoned) {
      String option = change.voided().get() ? "--void" : "--unvoid";
      throw Failure.usage(option + " needs a --reason, for whoever reads it in a year");
    }
    if (change.voided().orElse(false) && change.asset().isPresent()) {
      throw Failure.usage(
          "give --asset or --void: a result that does not count belongs to no pump");
    }
  }
}

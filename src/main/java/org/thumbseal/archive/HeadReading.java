package org.thumbseal.archive;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import tools.jackson.databind.node.ObjectNode;

/** Reads {@code head.json} of a directory, and says what is wrong with it. */
final class HeadReading {
  private final ResultDirectory directory;
  private final SealVerifier verifier;

  HeadReading(ResultDirectory directory, SealVerifier verifier) {
    this.directory = directory;
    this.verifier = verifier;
  }

  /** The head, when it is there and intact; told is all but a head by a key that is trusted. */
  Optional<Head> read(Consumer<Outcome> report) {
    if (!directory.hasHead()) {
      String text = "head.json is missing, so a cut-off end would not show";
      report.accept(new Outcome.Answered(directory.path(), SealAnswer.BROKEN_CHAIN, "", text));
      return Optional.empty();
    }
    try {
      return check(directory.head(), report);
    } catch (JsonRefusedException e) {
      report.accept(new Outcome.Unreadable(directory.headFile(), String.valueOf(e.getMessage())));
      return Optional.empty();
    }
  }

  /** Every chain that a head names, with its end. */
  static Map<String, ChainEnd> ends(Optional<Head> head) {
    Map<String, ChainEnd> ends = new LinkedHashMap<>();
    head.ifPresent(
        h -> {
          h.earlier().forEach(e -> ends.put(e.kid(), e));
          ends.put(h.last().kid(), h.last());
        });
    return ends;
  }

  private Optional<Head> check(ObjectNode tree, Consumer<Outcome> report) {
    SealCheck seal = verifier.check(tree);
    Optional<Head> head = seal.intact() ? Head.read(tree) : Optional.empty();
    if (seal.intact() && head.isEmpty()) {
      report.accept(answered(SealAnswer.BROKEN_CHAIN, "", "is not the head of a ledger"));
    } else if (seal.answer() != SealAnswer.TRUSTED_KEY) {
      report.accept(answered(seal.answer(), seal.signer(), seal.reason()));
    }
    return head;
  }

  private Outcome answered(SealAnswer answer, String signer, String remark) {
    return new Outcome.Answered(directory.headFile(), answer, signer, remark);
  }
}

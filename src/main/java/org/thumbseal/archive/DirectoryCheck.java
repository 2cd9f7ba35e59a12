package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import tools.jackson.databind.node.ObjectNode;

/** Checks every document of a result directory, the captures, and that the chains are whole. */
final class DirectoryCheck {
  private final ResultDirectory directory;
  private final SealVerifier verifier;
  private final Consumer<Outcome> report;
  private final Map<String, List<Link>> chains = new TreeMap<>();
  private final CorrectionCheck corrections;
  private long documents;
  private long captures;

  DirectoryCheck(ResultDirectory directory, SealVerifier verifier, Consumer<Outcome> report) {
    this.directory = directory;
    this.verifier = verifier;
    this.report = report;
    this.corrections = new CorrectionCheck(directory, report);
  }

  DirectorySummary run() throws IOException {
    Optional<Head> head = readHead(report);
    directory.forEachDocument(this::checkDocument);
    Optional<Head> newest = readHead(outcome -> {});
    Map<String, ChainEnd> ends = ends(head);
    ends.keySet().forEach(kid -> chains.computeIfAbsent(kid, k -> new ArrayList<>()));
    chains.forEach(
        (kid, links) ->
            reportChain(links, ends.getOrDefault(kid, ChainEnd.none(kid)), newestEnd(newest, kid)));
    corrections.run();
    return new DirectorySummary(directory.path(), documents, captures, chains.size());
  }

  /** Without a head nothing is known of an end, so nothing can lie beyond it. */
  private static ChainEnd newestEnd(Optional<Head> head, String kid) {
    return head.map(h -> h.end(kid).orElse(ChainEnd.none(kid)))
        .orElse(new ChainEnd(kid, Long.MAX_VALUE, ""));
  }

  private Optional<Head> readHead(Consumer<Outcome> reader) {
    if (!directory.hasHead()) {
      reader.accept(
          chainFault(directory.path(), "head.json is missing, so a cut-off end would not show"));
      return Optional.empty();
    }
    try {
      return checkHead(directory.head(), reader);
    } catch (JsonRefusedException e) {
      reader.accept(new Outcome.Unreadable(directory.headFile(), String.valueOf(e.getMessage())));
      return Optional.empty();
    }
  }

  private Optional<Head> checkHead(ObjectNode tree, Consumer<Outcome> reader) {
    SealCheck seal = verifier.check(tree);
    Optional<Head> head = seal.intact() ? Head.read(tree) : Optional.empty();
    if (seal.intact() && head.isEmpty()) {
      reader.accept(chainFault(directory.headFile(), "is not the head of a ledger"));
    } else if (seal.answer() != SealAnswer.TRUSTED_KEY) {
      reader.accept(
          new Outcome.Answered(directory.headFile(), seal.answer(), seal.signer(), seal.reason()));
    }
    return head;
  }

  private void checkDocument(Path file) {
    documents++;
    try {
      DocumentCheck check = DocumentCheck.of(file, verifier);
      corrections.see(file, check);
      captures += check.capture() == CaptureCheck.SAME ? 1 : 0;
      SealAnswer answer = check.answer(true);
      boolean broken = answer == SealAnswer.BROKEN_SEAL;
      check.entry().ifPresent(entry -> keep(file, entry, check.seal(), broken));
      if (broken) {
        report.accept(new Outcome.Answered(file, answer, check.seal().signer(), check.remark()));
      } else if (check.entry().isEmpty()) {
        report.accept(chainFault(file, "has no place in a ledger"));
      }
    } catch (JsonRefusedException e) {
      report.accept(new Outcome.Unreadable(file, String.valueOf(e.getMessage())));
    }
  }

  /** A lost capture is a fault of its own; the place in the chain is judged by the seal alone. */
  private void keep(Path file, LedgerEntry entry, SealCheck seal, boolean reported) {
    chains
        .computeIfAbsent(entry.kid(), k -> new ArrayList<>())
        .add(new Link(file, entry, seal, reported));
  }

  private void reportChain(List<Link> links, ChainEnd end, ChainEnd newestEnd) {
    ChainCheck check = ChainCheck.of(links, end, newestEnd);
    check.missing().forEach(text -> report.accept(chainFault(directory.path(), text)));
    for (Link link : links) {
      Optional<String> fault =
          Optional.ofNullable(check.faults().get(link)).or(() -> continuesFault(link));
      if (fault.isPresent()) {
        report.accept(chainFault(link.file(), fault.get()));
      } else if (!link.reported()) {
        SealCheck seal = link.seal();
        report.accept(
            new Outcome.Answered(link.file(), seal.answer(), seal.signer(), seal.reason()));
      }
    }
  }

  /** What is wrong with the tie to the chain of the key that was in use before. */
  private Optional<String> continuesFault(Link link) {
    return link.entry()
        .position()
        .continues()
        .filter(end -> link.sound())
        .filter(
            end -> chains.getOrDefault(end.kid(), List.of()).stream().noneMatch(l -> l.isAt(end)))
        .map(Link::tornFrom);
  }

  private static Map<String, ChainEnd> ends(Optional<Head> head) {
    Map<String, ChainEnd> ends = new HashMap<>();
    head.ifPresent(
        h -> {
          h.earlier().forEach(e -> ends.put(e.kid(), e));
          ends.put(h.last().kid(), h.last());
        });
    return ends;
  }

  private static Outcome chainFault(Path path, String text) {
    return new Outcome.Answered(path, SealAnswer.BROKEN_CHAIN, "", text);
  }
}

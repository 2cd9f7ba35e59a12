package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;

/**
 * Checks every document of a result directory, the captures, and that the chains are whole. Faults
 * of single files are told by folder and name, then those of each chain by number: the same
 * directory gives the same lines on every file system.
 */
final class DirectoryCheck {
  private final ResultDirectory directory;
  private final SealVerifier verifier;
  private final Consumer<Outcome> report;
  private final Map<String, Chain> chains = new TreeMap<>();
  private final CorrectionCheck corrections;
  private long documents;
  private long captures;
  private long withoutCapture;

  DirectoryCheck(ResultDirectory directory, SealVerifier verifier, Consumer<Outcome> report) {
    this.directory = directory;
    this.verifier = verifier;
    this.report = report;
    this.corrections = new CorrectionCheck(directory, report);
  }

  DirectorySummary run(VerificationProgress progress) throws IOException {
    HeadReading reading = new HeadReading(directory, verifier);
    Optional<Head> head = reading.read(report);
    List<Folder> folders = folders();
    long all = folders.stream().mapToLong(folder -> folder.documents().size()).sum();
    for (Folder folder : folders) {
      checkFolder(folder, () -> progress.checked(documents, all));
    }
    checkChains(head, reading.read(outcome -> {}));
    corrections.run();
    return summary();
  }

  /** All names are read first, so that what is stored meanwhile is left for the next time. */
  private List<Folder> folders() throws IOException {
    List<Folder> folders = new ArrayList<>();
    for (Path path : directory.folders()) {
      try {
        folders.add(directory.read(path));
      } catch (IOException e) {
        unreadable(path, e);
      }
    }
    return folders;
  }

  private void checkFolder(Folder folder, Runnable checkedOne) {
    FolderRemarks remarks = new FolderRemarks(folder, folder.path().equals(directory.path()));
    try (InOrder<DirectoryMember> members =
        new InOrder<>(
            member -> {
              take(folder, member);
              member.check().ifPresent(c -> remarks.document(member.name(), c.facts().capture()));
              checkedOne.run();
            })) {
      folder
          .documents()
          .forEach(name -> members.give(() -> DirectoryMember.of(folder.path(), name, verifier)));
      members.finish();
      remarks.report(report);
    } catch (IOException e) {
      unreadable(folder.path(), e);
    }
  }

  private void unreadable(Path path, IOException cause) {
    report.accept(new Outcome.Unreadable(path, ArchiveException.reading(cause)));
  }

  private void take(Folder folder, DirectoryMember member) {
    documents++;
    member.remarks(folder.path()).forEach(report);
    member.check().ifPresent(check -> take(folder, member.name(), check));
  }

  private void take(Folder folder, String name, DocumentCheck check) {
    Path file = folder.path().resolve(name);
    corrections.see(file, check);
    captures += check.capture() == CaptureCheck.SAME ? 1 : 0;
    withoutCapture += check.capture() == CaptureCheck.NONE ? 1 : 0;
    // A lost capture is a fault of its own; the place is judged by the seal alone.
    boolean reported = check.answer(true) == SealAnswer.BROKEN_SEAL || check.isHiddenAt(file);
    SealCheck seal = check.seal();
    Link.Standing standing =
        new Link.Standing(seal.answer(), seal.signer(), seal.reason(), reported);
    check
        .entry()
        .ifPresent(
            entry -> {
              chain(entry.kid()).add(folder.path(), name, entry, standing);
              check.facts().period().ifPresent(chain(entry.kid())::dated);
            });
  }

  private Chain chain(String kid) {
    return chains.computeIfAbsent(kid, k -> new Chain());
  }

  private void checkChains(Optional<Head> head, Optional<Head> newest) {
    Map<String, ChainEnd> ends = HeadReading.ends(head);
    ends.keySet().forEach(this::chain);
    chains.values().forEach(Chain::inOrder);
    chains.forEach(
        (kid, chain) -> {
          ChainEnd known = ends.getOrDefault(kid, ChainEnd.none(kid));
          ChainCheck.run(
              chain.inOrder(), new ChainCheck.End(known, newestEnd(newest, kid)), new Told(chain));
        });
  }

  /** What is wrong with the tie to the chain of the key that was in use before. */
  private Optional<String> tieFault(Chain chain, Link link) {
    return chain
        .tie(link)
        .filter(end -> link.sound())
        .filter(end -> !chains.containsKey(end.kid()) || !chain(end.kid()).holds(end))
        .map(Link::tornFrom);
  }

  /** Without a head nothing is known of an end, so nothing can lie beyond it. */
  private static ChainEnd newestEnd(Optional<Head> head, String kid) {
    return head.map(h -> h.end(kid).orElse(ChainEnd.none(kid)))
        .orElse(new ChainEnd(kid, Long.MAX_VALUE, ""));
  }

  private DirectorySummary summary() {
    List<ChainSummary> each = new ArrayList<>();
    chains.forEach((kid, chain) -> each.add(chain.summary(kid)));
    return new DirectorySummary(directory.path(), documents, captures, withoutCapture, each);
  }

  /** Passes on what is found in a chain. */
  private final class Told implements ChainCheck.Findings {
    private final Chain chain;

    Told(Chain chain) {
      this.chain = chain;
    }

    @Override
    public void missing(String text) {
      report.accept(DirectoryMember.chainFault(directory.path(), text));
    }

    @Override
    public void judged(Link link, String placeFault) {
      String fault = placeFault.isEmpty() ? tieFault(chain, link).orElse("") : placeFault;
      Link.Standing seal = link.standing();
      if (!fault.isEmpty()) {
        report.accept(DirectoryMember.chainFault(link.file(), fault));
      } else if (!seal.reported()) {
        report.accept(
            new Outcome.Answered(link.file(), seal.answer(), seal.signer(), seal.reason()));
      }
    }
  }
}

package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.CorrectionReader;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.record.Correction;
import org.thumbseal.record.ResultId;
import org.thumbseal.record.Standing;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * The corrections of a result directory, and through them every result as it is to be shown. Only
 * such as are sealed by a trusted key count. Their places in the chain are for {@code verify}.
 */
public final class Corrections {
  /** One that was made in ignorance of another bears the same number: the later one wins. */
  private static final Comparator<SealedCorrection> ORDER =
      Comparator.comparingLong((SealedCorrection c) -> c.correction().number())
          .thenComparing(c -> c.correction().said().at())
          .thenComparing(c -> c.correction().id());

  private final Map<String, List<SealedCorrection>> byDigest = new HashMap<>();

  Corrections() {}

  /**
   * Reads those files of a result directory that are named as corrections are when they are stored:
   * there may be thousands of others.
   *
   * @param remarks is told a line about each file that is no sound correction
   * @throws ArchiveException if the directory cannot be read
   */
  public static Corrections in(Path results, TrustStore trust, Consumer<String> remarks)
      throws ArchiveException {
    try {
      return in(new ResultDirectory(results), new SealVerifier(trust), remarks);
    } catch (IOException e) {
      throw new ArchiveException(results + ": cannot be read: " + e.getMessage());
    }
  }

  static Corrections in(ResultDirectory directory, SealVerifier verifier, Consumer<String> remarks)
      throws IOException {
    Corrections found = new Corrections();
    directory.forEachDocument(
        file -> {
          if (ResultName.isCorrection(file)) {
            found.read(file, verifier, remarks);
          }
        });
    return found;
  }

  /** Those of several directories, a copy of one counted once. */
  public static Corrections together(List<Corrections> several) {
    Corrections all = new Corrections();
    several.forEach(one -> one.byDigest.values().forEach(list -> list.forEach(all::add)));
    return all;
  }

  private void add(SealedCorrection correction) {
    List<SealedCorrection> there =
        byDigest.computeIfAbsent(
            correction.correction().corrects().digest(), d -> new ArrayList<>());
    if (there.stream().noneMatch(c -> isCopy(c, correction))) {
      there.add(correction);
    }
  }

  /** A stranger may give his the id of another. */
  private static boolean isCopy(SealedCorrection one, SealedCorrection other) {
    return one.correction().equals(other.correction()) && one.counts() == other.counts();
  }

  private void read(Path file, SealVerifier verifier, Consumer<String> remarks) {
    try {
      ObjectNode document = JsonGate.read(file);
      SealCheck seal = verifier.check(document);
      if (seal.intact()) {
        add(file, document, seal);
      } else {
        remarks.accept(file + ": this correction is not used: " + seal.reason());
      }
    } catch (JsonRefusedException e) {
      remarks.accept(file + ": this correction is not used: it " + e.getMessage());
    }
  }

  /** Takes one whose seal is intact. */
  void add(Path file, ObjectNode document, SealCheck seal) throws JsonRefusedException {
    Correction correction = CorrectionReader.read(document);
    byDigest
        .computeIfAbsent(correction.corrects().digest(), d -> new ArrayList<>())
        .add(new SealedCorrection(file, seal.answer(), seal.signer(), correction));
  }

  /** All there are, by the digest of the result that each corrects; in the order they apply in. */
  Map<String, List<SealedCorrection>> all() {
    byDigest.values().forEach(list -> list.sort(ORDER));
    return byDigest;
  }

  /** The corrections of a sealed result, in the order in which they apply; strangers' too. */
  public List<SealedCorrection> of(ObjectNode result) {
    // As a rule there are none, and a digest costs more than all the rest.
    return byDigest.isEmpty()
        ? List.of()
        : byDigest.getOrDefault(Seal.digest(result), List.of()).stream().sorted(ORDER).toList();
  }

  /** How a sealed result stands, all its corrections considered. */
  public Standing standing(ObjectNode result) {
    return standing(result, of(result));
  }

  static Standing standing(ObjectNode result, List<SealedCorrection> corrections) {
    Standing standing = CorrectionTree.standing(result);
    for (SealedCorrection each : corrections) {
      standing = each.counts() ? each.correction().appliedTo(standing) : standing;
    }
    return standing;
  }

  /**
   * The correction that has to be stored so that this is said of a result.
   *
   * @param file of the result
   * @throws IllegalArgumentException if the result is not sealed
   */
  public Correction next(Path file, ObjectNode result, Correction.Said said) {
    LedgerEntry entry =
        LedgerEntry.read(result)
            .orElseThrow(() -> new IllegalArgumentException("the result is not sealed"));
    var subject =
        new Correction.Subject(
            result.path("id").asString(""),
            entry.digest(),
            entry.kid(),
            entry.position().sequence(),
            file.getFileName().toString());
    var nameless = new Correction("", subject, numberOfNext(result), standing(result), said);
    String digest = Sha256.hex(Canonical.bytes(CorrectionTree.said(nameless)));
    return new Correction(ResultId.of(digest, 1), subject, nameless.number(), nameless.was(), said);
  }

  /**
   * Others may trust whom we do not, so strangers' corrections are counted as well: to be number 1
   * beside a stranger's number 2 would let that one overrule what was said after it. A stranger's
   * number beyond how many there are is made up, and would use all numbers up.
   */
  private long numberOfNext(ObjectNode result) {
    List<SealedCorrection> there = of(result);
    return 1
        + there.stream()
            .filter(c -> c.counts() || c.correction().number() <= there.size())
            .mapToLong(c -> c.correction().number())
            .max()
            .orElse(0);
  }
}

package org.thumbseal.fuzz;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.thumbseal.json.CalibrationReader;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.CriteriaFile;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.SoundRecordFile;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * Spoilt and forged documents, heads and calibrations, through gate and seal. What is accepted must
 * have the canonical form of something the trusted key has sealed.
 */
final class DocumentTarget implements Target {
  private final SigningKey key = Keys.of(1);
  private final SigningKey stranger = Keys.of(2);
  private final SealVerifier verifier = new SealVerifier(TrustStore.of(key.verifyingKey()));
  private final List<ObjectNode> originals = Genuine.sealed(key);
  private final Set<String> sealed = new HashSet<>();
  private final Map<String, Long> outcomes = new TreeMap<>();

  DocumentTarget() {
    originals.forEach(original -> sealed.add(Canonical.text(original)));
  }

  @Override
  public Attempt next(Dice dice) {
    ObjectNode original = dice.of(originals);
    ObjectNode donor = dice.of(originals);
    return switch (dice.below(50)) {
      case 0 -> new Reading(Rewriting.of(original, dice), bytes -> read("rewritten", bytes, ""));
      case 1, 2 -> forged(original, donor, dice);
      case 3, 4, 5 -> edited(original, donor, dice);
      default -> spoilt(original, donor, dice);
    };
  }

  /** Bytes spoilt without knowing what they mean. */
  private Attempt spoilt(ObjectNode original, ObjectNode donor, Dice dice) {
    byte[] form = dice.oneIn(8) ? Rewriting.of(original, dice) : Genuine.bytes(original);
    byte[] input = Mutation.some(form, Genuine.bytes(donor), dice);
    return new Reading(input, bytes -> read("bytes", bytes, ""));
  }

  /** Another content under the old signature. */
  private Attempt edited(ObjectNode original, ObjectNode donor, Dice dice) {
    ObjectNode copy = original.deepCopy();
    for (int i = dice.between(1, 2); i > 0; i--) {
      TreeEdit.any(copy, donor, dice);
    }
    return new Reading(Rewriting.of(copy, dice), bytes -> read("edited", bytes, ""));
  }

  /** Another content, and a stranger's hand at the signature. */
  private Attempt forged(ObjectNode original, ObjectNode donor, Dice dice) {
    ObjectNode copy = original.deepCopy();
    TreeEdit.any(copy, donor, dice);
    Forgery forgery = dice.of(List.of(Forgery.values()));
    String own = "";
    try {
      own = forgery.apply(copy, new Forgery.Hands(stranger, key.verifyingKey(), dice));
    } catch (IllegalArgumentException e) {
      // The edit left it without a canonical form: then there is nothing to sign.
    }
    String accepted = own;
    return new Reading(
        Rewriting.of(copy, dice), bytes -> read("forged " + forgery.name(), bytes, accepted));
  }

  /** {@code own}: canonical form of what a stranger has truly sealed; good, but never trusted. */
  private void read(String how, byte[] bytes, String own) {
    try {
      ObjectNode tree = JsonGate.read(bytes);
      count(how, judged(tree, own));
      readOn(tree);
    } catch (JsonRefusedException e) {
      Said.requirePlain(String.valueOf(e.getMessage()));
      require(!how.equals("rewritten"), "a genuine document is refused: " + e.getMessage());
      count(how, "refused");
    }
  }

  private String judged(ObjectNode tree, String own) {
    SealCheck check = verifier.check(tree);
    String canonical = Canonical.text(tree);
    boolean genuine = sealed.contains(canonical);
    Said.requirePlain(check.reason());
    require(genuine == (check.answer() == SealAnswer.TRUSTED_KEY), "FORGERY: " + check);
    require(genuine || !check.intact() || canonical.equals(own), "FORGERY: " + check);
    return genuine ? "the original in other words" : check.answer().code();
  }

  /** Whatever reads a document behind the gate has one checked answer to what it does not take. */
  private static void readOn(ObjectNode tree) {
    LedgerEntry.read(tree);
    Head.read(tree).ifPresent(Head::documents);
    Seal.digest(tree);
    refusing(() -> CalibrationReader.read(tree));
    refusing(() -> SoundRecordFile.of(tree));
    refusing(() -> CriteriaFile.of(tree));
  }

  private interface Refusing {
    void read() throws JsonRefusedException;
  }

  private static void refusing(Refusing reader) {
    try {
      reader.read();
    } catch (JsonRefusedException e) {
      Said.requirePlain(String.valueOf(e.getMessage()));
    }
  }

  private static void require(boolean condition, String otherwise) {
    if (!condition) {
      throw new AssertionError(otherwise);
    }
  }

  private void count(String how, String outcome) {
    outcomes.merge(how + ": " + outcome, 1L, Long::sum);
  }

  @Override
  public String figures() {
    StringBuilder text = new StringBuilder();
    outcomes.forEach((what, count) -> text.append(String.format("%9d  %s%n", count, what)));
    return text.toString();
  }
}

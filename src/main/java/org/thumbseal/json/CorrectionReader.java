package org.thumbseal.json;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.record.Standing;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads a correction document, whose seal is the caller's to check. */
public final class CorrectionReader {
  /** Of any text in it: many of them are kept at once. */
  private static final int LONGEST = 4000;

  private final ObjectNode tree;

  private CorrectionReader(ObjectNode tree) {
    this.tree = tree;
  }

  /** Whether a document says that it is a correction, of whatever version. */
  public static boolean isCorrection(ObjectNode tree) {
    return tree.path("kind").asString("").equals(Correction.KIND);
  }

  /**
   * Reads it.
   *
   * @throws JsonRefusedException with half a sentence if it is none, or lacks what it takes to know
   *     what it corrects and how
   */
  public static Correction read(ObjectNode tree) throws JsonRefusedException {
    if (!tree.path("schema").asString("").equals(Correction.SCHEMA)) {
      throw new JsonRefusedException("is no correction of version 1");
    }
    CorrectionReader reader = new CorrectionReader(tree);
    return new Correction(
        reader.text("/id"), reader.subject(), reader.count("/number"), reader.was(), reader.said());
  }

  private Subject subject() throws JsonRefusedException {
    String digest = text("/corrects/digest");
    if (!digest.matches("[0-9a-f]{64}")) {
      throw malformed("/corrects/digest");
    }
    String file = text("/corrects/file");
    if (file.matches("(?s).*[/\\\\\0].*") || file.equals("..")) {
      throw new JsonRefusedException("names a result outside the folders of its directory");
    }
    return new Subject(
        text("/corrects/id"), digest, text("/corrects/kid"), count("/corrects/sequence"), file);
  }

  private Standing was() throws JsonRefusedException {
    return new Standing(
        optional("/was/asset/id"),
        optional("/was/note"),
        tree.at("/was/void").isMissingNode() ? Optional.empty() : optional("/was/reason"));
  }

  private Said said() throws JsonRefusedException {
    Change change = change();
    Optional<String> reason = optional("/reason");
    if (change.asset().isEmpty() && change.note().isEmpty() && change.voided().isEmpty()) {
      throw new JsonRefusedException("changes nothing that is known here");
    }
    if (change.voided().isPresent() && reason.isEmpty()) {
      throw malformed("/reason");
    }
    return new Said(change, reason, optional("/by"), at());
  }

  private Change change() throws JsonRefusedException {
    JsonNode voided = tree.at("/change/void");
    if (!voided.isMissingNode() && !voided.isBoolean()) {
      throw malformed("/change/void");
    }
    return new Change(
        optional("/change/asset/id"),
        optional("/change/note"),
        voided.isBoolean() ? Optional.of(voided.booleanValue()) : Optional.empty());
  }

  private Instant at() throws JsonRefusedException {
    try {
      return Instant.parse(text("/correctedAt"));
    } catch (DateTimeException e) {
      throw malformed("/correctedAt");
    }
  }

  private Optional<String> optional(String path) throws JsonRefusedException {
    return tree.at(path).isMissingNode() ? Optional.empty() : Optional.of(text(path));
  }

  private String text(String path) throws JsonRefusedException {
    JsonNode node = tree.at(path);
    boolean text = node.isString() && !node.stringValue().isEmpty();
    if (!text || node.stringValue().length() > LONGEST) {
      throw malformed(path);
    }
    return node.stringValue();
  }

  private long count(String path) throws JsonRefusedException {
    JsonNode node = tree.at(path);
    if (!node.isIntegralNumber() || node.longValue() < 1) {
      throw malformed(path);
    }
    return node.longValue();
  }

  private static JsonRefusedException malformed(String path) {
    return new JsonRefusedException(
        "is no sound correction: its "
            + path.substring(1).replace('/', '.')
            + " is missing or wrong");
  }
}

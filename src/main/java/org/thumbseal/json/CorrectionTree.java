package org.thumbseal.json;

import java.util.Optional;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.record.Software;
import org.thumbseal.record.Standing;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A correction as the tree that is written and sealed; what does not exist is absent. */
public final class CorrectionTree {
  private CorrectionTree() {}

  /** The document without ledger and signature. */
  public static ObjectNode of(Correction correction) {
    ObjectNode tree = said(correction);
    tree.put("id", correction.id());
    tree.put("correctedAt", CalibrationTree.MILLIS.format(correction.said().at()));
    tree.putObject("software").put("name", Software.NAME).put("version", Software.VERSION);
    return tree;
  }

  /**
   * All but the moment and the program: what the id is made of, so that the same correction given
   * twice is one.
   */
  public static ObjectNode said(Correction correction) {
    ObjectNode tree = Json.object().put("schema", Correction.SCHEMA).put("kind", Correction.KIND);
    tree.set("corrects", subject(correction.corrects()));
    tree.put("number", correction.number());
    Said said = correction.said();
    tree.set("change", change(said.change()));
    tree.set("was", of(correction.was()));
    said.reason().ifPresent(why -> tree.put("reason", why));
    said.by().ifPresent(who -> tree.put("by", who));
    return tree;
  }

  /** How a result stands that has not been corrected. */
  public static Standing standing(ObjectNode result) {
    JsonNode id = result.path("asset").path("id");
    return Standing.sealed(
        id.isString() ? Optional.of(id.stringValue()) : Optional.<String>empty());
  }

  private static ObjectNode subject(Subject subject) {
    return Json.object()
        .put("id", subject.id())
        .put("digest", subject.digest())
        .put("kid", subject.kid())
        .put("sequence", subject.sequence())
        .put("file", subject.file());
  }

  private static ObjectNode change(Change change) {
    ObjectNode tree = Json.object();
    change.asset().ifPresent(id -> tree.putObject("asset").put("id", id));
    change.note().ifPresent(text -> tree.put("note", text));
    change.voided().ifPresent(gone -> tree.put("void", gone));
    return tree;
  }

  /** A standing: {@code asset}, {@code note}, and where it is void {@code void} and why. */
  public static ObjectNode of(Standing was) {
    ObjectNode tree = Json.object();
    was.asset().ifPresent(id -> tree.putObject("asset").put("id", id));
    was.note().ifPresent(text -> tree.put("note", text));
    was.voided().ifPresent(why -> tree.put("void", true).put("reason", why));
    return tree;
  }
}

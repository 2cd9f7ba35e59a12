package org.thumbseal.json;

import org.thumbseal.care.Inspection;
import org.thumbseal.care.Inspection.Answer;
import org.thumbseal.care.Inspection.Outcome;
import org.thumbseal.care.Inspection.Said;
import org.thumbseal.record.Software;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a person did to a pump as the tree that is written and sealed; what is missing is absent.
 */
public final class InspectionTree {
  private InspectionTree() {}

  /** The document without ledger and signature. */
  public static ObjectNode of(Inspection inspection) {
    ObjectNode tree = said(inspection.said());
    tree.put("id", inspection.id());
    tree.put("recordedAt", CalibrationTree.MILLIS.format(inspection.recordedAt()));
    tree.putObject("software").put("name", Software.NAME).put("version", Software.VERSION);
    return tree;
  }

  /**
   * All but the moment and the program: what the id is made of, so that the same words said twice
   * are one document.
   */
  public static ObjectNode said(Said said) {
    ObjectNode tree = Json.object().put("schema", Inspection.SCHEMA).put("kind", Inspection.KIND);
    tree.putObject("asset").put("id", said.asset());
    tree.put("work", said.done().work().code());
    tree.put("on", said.done().on().toString());
    tree.put("inOrder", said.done().inOrder());
    tree.put("by", said.by());
    said.more().note().ifPresent(note -> tree.put("note", note));
    if (!said.more().answers().isEmpty()) {
      ArrayNode answers = tree.putArray("answers");
      said.more().answers().forEach(answer -> add(answers, answer));
    }
    said.more().outcome().ifPresent(outcome -> add(tree.putObject("outcome"), outcome));
    return tree;
  }

  private static void add(ArrayNode answers, Answer answer) {
    ObjectNode node = answers.addObject();
    node.put("question", answer.question()).put("answer", answer.answer());
    answer
        .words()
        .ifPresent(words -> node.put("asked", words.question()).put("answered", words.answer()));
  }

  private static void add(ObjectNode node, Outcome outcome) {
    node.put("code", outcome.code()).put("cause", outcome.cause());
    node.put("next", outcome.next()).put("who", outcome.who());
  }
}

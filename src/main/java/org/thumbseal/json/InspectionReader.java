package org.thumbseal.json;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Inspection.Answer;
import org.thumbseal.care.Inspection.Asked;
import org.thumbseal.care.Inspection.Done;
import org.thumbseal.care.Inspection.More;
import org.thumbseal.care.Inspection.Outcome;
import org.thumbseal.care.Inspection.Said;
import org.thumbseal.care.Work;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads what a person did to a pump; the seal is the caller's to check. */
public final class InspectionReader {
  private static final int LONGEST = 1000;

  private final ObjectNode tree;

  private InspectionReader(ObjectNode tree) {
    this.tree = tree;
  }

  /** Whether a document says that it is one of these, of whatever version. */
  public static boolean isInspection(ObjectNode tree) {
    return tree.path("kind").asString("").equals(Inspection.KIND);
  }

  /**
   * Reads it.
   *
   * @throws JsonRefusedException with half a sentence if it is none, or something in it is missing
   *     or of a kind that this version does not know
   */
  public static Inspection read(ObjectNode tree) throws JsonRefusedException {
    if (!tree.path("schema").asString("").equals(Inspection.SCHEMA)) {
      throw new JsonRefusedException("is no inspection of version 1");
    }
    InspectionReader reader = new InspectionReader(tree);
    try {
      return new Inspection(
          reader.text("/id"), reader.said(), Instant.parse(reader.text("/recordedAt")));
    } catch (DateTimeException e) {
      throw new JsonRefusedException("has a date that is none");
    }
  }

  private Said said() throws JsonRefusedException {
    return new Said(text("/asset/id"), done(), text("/by"), more());
  }

  private Done done() throws JsonRefusedException {
    Work work = Work.of(text("/work")).orElseThrow(() -> malformed("/work"));
    JsonNode inOrder = tree.at("/inOrder");
    if (!inOrder.isBoolean()) {
      throw malformed("/inOrder");
    }
    return new Done(work, LocalDate.parse(text("/on")), inOrder.booleanValue());
  }

  private More more() throws JsonRefusedException {
    Optional<String> note = tree.has("note") ? Optional.of(text("/note")) : Optional.empty();
    List<Answer> answers = new ArrayList<>();
    for (int at = 0; at < tree.path("answers").size(); at++) {
      answers.add(answer("/answers/" + at));
    }
    return new More(note, answers, tree.has("outcome") ? Optional.of(outcome()) : Optional.empty());
  }

  private Answer answer(String path) throws JsonRefusedException {
    Optional<Asked> words =
        tree.at(path).has("asked")
            ? Optional.of(new Asked(text(path + "/asked"), text(path + "/answered")))
            : Optional.empty();
    return new Answer(text(path + "/question"), text(path + "/answer"), words);
  }

  private Outcome outcome() throws JsonRefusedException {
    return new Outcome(
        text("/outcome/code"), text("/outcome/cause"), text("/outcome/next"), text("/outcome/who"));
  }

  private String text(String path) throws JsonRefusedException {
    JsonNode node = tree.at(path);
    boolean text = node.isString() && !node.stringValue().isEmpty();
    if (!text || node.stringValue().length() > LONGEST) {
      throw malformed(path);
    }
    return node.stringValue();
  }

  private static JsonRefusedException malformed(String path) {
    return new JsonRefusedException(
        "is no sound inspection: its "
            + path.substring(1).replace('/', '.')
            + " is missing or wrong");
  }
}

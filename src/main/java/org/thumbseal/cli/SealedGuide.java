package org.thumbseal.cli;

import java.util.List;
import java.util.Optional;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Inspection.Answer;
import org.thumbseal.care.Inspection.Asked;
import org.thumbseal.care.Inspection.Done;
import org.thumbseal.care.Inspection.More;
import org.thumbseal.care.Inspection.Said;
import org.thumbseal.care.Work;
import org.thumbseal.guide.Outcome;
import org.thumbseal.guide.Walk;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.InspectionTree;
import org.thumbseal.link.HostClock;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;

/**
 * A walk through the trouble guide as the document that is sealed.
 *
 * @param asset the pump
 * @param by who answered
 * @param note a remark
 */
record SealedGuide(String asset, String by, Optional<String> note) {
  /** The document of a walk that has come to its end. */
  Inspection of(Walk walk, Outcome outcome, HostClock clock) {
    // The guide finds no pump fit for use: only a test can.
    Done done = new Done(Work.TROUBLE_GUIDE, SaidDate.today(clock), false);
    Said said =
        new Said(asset, done, by, new More(note, answers(walk), Optional.of(said(outcome))));
    String digest = Sha256.hex(Canonical.bytes(InspectionTree.said(said)));
    return new Inspection(ResultId.of(digest, 1), said, CalibrationTree.toMillis(clock.wall()));
  }

  private static List<Answer> answers(Walk walk) {
    return walk.answered().stream().map(SealedGuide::answer).toList();
  }

  private static Answer answer(Walk.Answered answered) {
    return new Answer(
        answered.question().code(),
        answered.choice().code(),
        Optional.of(new Asked(answered.question().text(), answered.choice().words())));
  }

  private static Inspection.Outcome said(Outcome outcome) {
    return new Inspection.Outcome(
        outcome.code(), outcome.cause(), outcome.next(), outcome.who().words());
  }
}

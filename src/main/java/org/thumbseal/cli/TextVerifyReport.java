package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.EnumMap;
import java.util.Map;
import org.thumbseal.archive.DirectorySummary;
import org.thumbseal.archive.Outcome;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.SealAnswer;

/** For people: a line for each document that was named, for each fault, and for the whole. */
final class TextVerifyReport extends VerifyReport {
  private final PrintWriter out;
  private final Map<SealAnswer, Long> files = new EnumMap<>(SealAnswer.class);
  private Map<SealAnswer, Long> members = new EnumMap<>(SealAnswer.class);
  private long filesNamed;
  private long membersUnreadable;

  TextVerifyReport(PrintWriter out, PrintWriter err) {
    super(err);
    this.out = out;
  }

  @Override
  void show(Outcome outcome) {
    filesNamed++;
    if (outcome instanceof Outcome.Answered answered) {
      files.merge(answered.answer(), 1L, Long::sum);
      out.println(line(answered));
    }
  }

  @Override
  void showMember(Outcome outcome) {
    if (outcome instanceof Outcome.Answered answered) {
      members.merge(answered.answer(), 1L, Long::sum);
      if (answered.answer() != SealAnswer.TRUSTED_KEY) {
        out.println(line(answered));
      }
    } else if (outcome instanceof Outcome.Remarked remarked) {
      out.println(name(remarked) + ": " + Printable.line(remarked.remark()));
    } else {
      membersUnreadable++;
    }
  }

  @Override
  void showCorrected(Outcome.Corrected corrected) {
    CorrectionText.lines(corrected).forEach(out::println);
  }

  @Override
  void directory(DirectorySummary summary) {
    String name = Printable.line(summary.directory().toString());
    out.println(name + ": " + DirectoryText.seen(summary) + " checked: " + verdict());
    DirectoryText.details(summary).forEach(detail -> out.println("  " + detail));
    members = new EnumMap<>(SealAnswer.class);
    membersUnreadable = 0;
  }

  @Override
  int end() {
    if (filesNamed > 1) {
      out.println(DirectoryText.count(filesNamed, "document") + " checked: " + tally(files));
    }
    return super.end();
  }

  private String verdict() {
    boolean good = membersUnreadable == 0 && members.keySet().stream().allMatch(this::trusted);
    if (good) {
      return "nothing missing, all with a " + SealAnswer.TRUSTED_KEY.text();
    }
    String unreadable = membersUnreadable == 0 ? "" : ", " + membersUnreadable + " unreadable";
    return tally(members) + unreadable;
  }

  private boolean trusted(SealAnswer answer) {
    return answer == SealAnswer.TRUSTED_KEY;
  }

  private static String tally(Map<SealAnswer, Long> counts) {
    StringBuilder text = new StringBuilder();
    counts.forEach(
        (answer, count) ->
            text.append(text.isEmpty() ? "" : ", ")
                .append(count)
                .append(' ')
                .append(answer.text()));
    return text.isEmpty() ? "none readable" : text.toString();
  }

  private static String line(Outcome.Answered answered) {
    String signer = answered.signer().isEmpty() ? "" : " (" + answered.signer() + ")";
    String remark = answered.remark().isEmpty() ? "" : ": " + answered.remark();
    return name(answered) + ": " + answered.answer().text() + Printable.line(signer + remark);
  }
}

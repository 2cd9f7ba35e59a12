package org.thumbseal.cli;

import java.util.Locale;
import org.thumbseal.cli.IndependentCapture.Deviation;
import tools.jackson.databind.node.ObjectNode;

/** Prints how far the replay of each independent capture is from the truth. */
final class IndependentErrors {
  private IndependentErrors() {}

  public static void main(String[] args) {
    System.out.println(
        "capture                  quantity          truth   measured    error   bound");
    for (IndependentCapture capture : IndependentCapture.all()) {
      Answer answer = Answer.to("replay", "--json", capture.file());
      System.out.print(answer.err());
      for (ObjectNode document : answer.documents()) {
        capture.deviations(document).forEach(d -> System.out.println(row(capture, d)));
      }
    }
  }

  private static String row(IndependentCapture capture, Deviation d) {
    return String.format(
        Locale.ROOT,
        "%-24s %-13s %9.4f  %9.4f  %+7.4f  %6.3f",
        capture.name(),
        d.quantity(),
        d.truth(),
        d.measured(),
        d.error(),
        d.bound());
  }
}

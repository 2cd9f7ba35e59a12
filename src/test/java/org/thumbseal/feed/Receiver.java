package org.thumbseal.feed;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.function.Function;

/** The other side, in memory: notes what comes, and answers as it is told to. */
final class Receiver implements Courier {
  private final List<String> arrivals = new ArrayList<>();
  private Function<String, Answer> answers = id -> new Answer.Accepted();

  /** From now on it answers so; a document that is accepted, or whose answer is lost, arrives. */
  void answering(Function<String, Answer> next) {
    answers = next;
  }

  @Override
  public Answer deliver(Parcel parcel) {
    Answer answer = answers.apply(parcel.label().id());
    if (answer instanceof Answer.Accepted) {
      arrivals.add(parcel.label().id());
    }
    return answer;
  }

  /** It arrives, and its answer does not. */
  Answer losingAnswer(String id) {
    arrivals.add(id);
    return new Answer.Trouble("the answer is lost");
  }

  List<String> arrivals() {
    return arrivals;
  }

  /** Each once, as it came first. */
  List<String> firstArrivals() {
    return List.copyOf(new LinkedHashSet<>(arrivals));
  }

  @Override
  public void rest() {}
}

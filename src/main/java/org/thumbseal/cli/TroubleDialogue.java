package org.thumbseal.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.thumbseal.guide.Choice;
import org.thumbseal.guide.Question;
import org.thumbseal.guide.Question.Kind;
import org.thumbseal.guide.Walk;

/**
 * Asks the questions of the trouble guide one at a time. What was answered so far can be looked at
 * from another thread at any time, for whoever is interrupted.
 */
final class TroubleDialogue {
  private static final String BACK = "back";

  private final Consumer<String> say;
  private volatile Walk walk = Walk.begun();

  /** Nothing is answered yet. */
  TroubleDialogue(Consumer<String> say) {
    this.say = say;
  }

  Walk walk() {
    return walk;
  }

  /** What was answered so far, as {@code --answers} takes it. */
  String answers() {
    return walk.answered().stream().map(a -> a.choice().code()).collect(Collectors.joining(","));
  }

  /** Takes answers that were given beforehand; the first that is none ends the command. */
  void take(List<String> given) {
    for (int i = 0; i < given.size(); i++) {
      String typed = given.get(i);
      Question question = walk.question().orElseThrow(() -> tooMany(given));
      int number = i + 1;
      Choice choice = question.choice(typed).orElseThrow(() -> none(number, typed, question));
      walk = walk.with(choice);
    }
  }

  private Failure tooMany(List<String> given) {
    int more = given.size() - walk.answered().size();
    return Failure.usage("--answers: the guide was at its end, and there were " + more + " more");
  }

  private static Failure none(int number, String typed, Question question) {
    return Failure.usage(
        "--answers: answer "
            + number
            + ", to '"
            + question.code()
            + "', is '"
            + typed
            + "'; say "
            + question.choices().stream().map(Choice::code).collect(Collectors.joining(" or ")));
  }

  /** Asks until the guide has come to its end, or nobody answers any more. */
  void ask(BufferedReader typed) throws IOException {
    for (Optional<Question> now = walk.question(); now.isPresent(); now = walk.question()) {
      show(now.get());
      String line = typed.readLine();
      if (line == null) {
        return;
      }
      take(now.get(), line);
    }
  }

  private void take(Question question, String line) {
    if (line.strip().equalsIgnoreCase(BACK)) {
      back();
      return;
    }
    Optional<Choice> choice = question.choice(line);
    if (choice.isPresent()) {
      walk = walk.with(choice.get());
    } else if (question.kind() == Kind.CAUTION) {
      say.accept("Type yes when it is so; the guide does not go on before.");
    } else {
      say.accept("That is no answer here: type " + question.offered() + ", or " + BACK + ".");
    }
  }

  private void back() {
    if (walk.answered().isEmpty()) {
      say.accept("This is the first question.");
    }
    walk = walk.back();
  }

  private void show(Question question) {
    String lead = question.kind() == Kind.CAUTION ? "CAUTION. " : "";
    say.accept("");
    say.accept(lead + question.text());
    List<Choice> choices = question.choices();
    if (question.isChoice()) {
      for (int i = 0; i < choices.size(); i++) {
        say.accept("  " + (i + 1) + "  " + choices.get(i).words());
      }
    }
    say.accept(
        question.kind() == Kind.CAUTION
            ? "Is it so, and will it be kept to? (yes)"
            : "(" + question.offered() + "; " + BACK + ")");
  }
}

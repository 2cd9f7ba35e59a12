package org.thumbseal.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.thumbseal.guide.Question.Kind;

/** The table of the guide, every path of it. */
class GuideTest {
  private static final int LONGEST_PATH = 25;

  /** Walks every path; one that never ended would be longer than there are questions. */
  private static void forEachPath(Walk walk, Consumer<Walk> ended) {
    assertThat(walk.answered()).hasSizeLessThan(LONGEST_PATH);
    if (walk.outcome().isPresent()) {
      assertThat(walk.question()).isEmpty();
      ended.accept(walk);
      return;
    }
    Question question = walk.question().orElseThrow(() -> new AssertionError(walk.toString()));
    question.choices().forEach(choice -> forEachPath(walk.with(choice), ended));
  }

  private static List<Walk> paths() {
    List<Walk> all = new ArrayList<>();
    forEachPath(Walk.begun(), all::add);
    return all;
  }

  @Test
  void everyPathEndsAndNothingIsOutOfReach() {
    Set<String> asked = new TreeSet<>();
    Set<String> reached = new TreeSet<>();
    for (Walk path : paths()) {
      path.answered().forEach(a -> asked.add(a.question().code()));
      reached.add(path.outcome().orElseThrow().code());
    }
    assertThat(asked)
        .hasSize(Guide.questions().size())
        .containsAll(Guide.questions().stream().map(Question::code).toList());
    assertThat(reached)
        .hasSize(Guide.outcomes().size())
        .containsAll(Guide.outcomes().stream().map(Outcome::code).toList());
  }

  @Test
  void noPathAsksTheSameTwice() {
    for (Walk path : paths()) {
      assertThat(path.answered().stream().map(a -> a.question().code())).doesNotHaveDuplicates();
    }
  }

  @Test
  void everyCautionComesBeforeAnythingElse() {
    List<String> cautions =
        Guide.questions().stream()
            .filter(q -> q.kind() == Kind.CAUTION)
            .map(Question::code)
            .toList();
    assertThat(cautions).hasSize(5);
    for (Walk path : paths()) {
      assertThat(path.answered().stream().limit(5).map(a -> a.question().code()))
          .containsExactlyElementsOf(cautions);
    }
  }

  @Test
  void whoeverTouchesMainsWasToldSoInTheTable() {
    for (Question question : Guide.questions()) {
      boolean mains =
          question.text().matches("(?is).*\\b(plug|fuse|cord|switch|socket)\\b.*")
              && question.kind() != Kind.CAUTION;
      if (mains) {
        assertThat(question.kind()).as(question.code()).isEqualTo(Kind.MAINS);
      }
    }
  }

  /** Hands go to fuse and cord, to jar, tubes and gasket, only when the plug is out. */
  @Test
  void whereHandsGoInThePlugIsOutFirst() {
    for (Question question : Guide.questions()) {
      if (question.text().matches("(?is).*(take out|take the fuse|fuse out|lid|filter|float).*")) {
        assertThat(question.text()).as(question.code()).containsIgnoringCase("unplug");
      }
    }
  }

  @Test
  void damageOfTheMainsEndsItAtOnceWithTheTechnician() {
    Walk walk = Walk.begun();
    for (int i = 0; i < 5; i++) {
      walk = walk.with(walk.question().orElseThrow().choices().get(0));
    }
    Question cord = walk.question().orElseThrow();
    assertThat(cord.code()).isEqualTo("cord-sound");
    Outcome outcome = walk.with(cord.choice("no").orElseThrow()).outcome().orElseThrow();
    assertThat(outcome.who()).isEqualTo(Outcome.Who.TECHNICIAN);
    assertThat(outcome.next()).contains("Do not switch it on", "out of use");
  }

  @Test
  void everyComplaintOfTheListLeadsToADifferentPlace() {
    Question complaint = Guide.question("complaint").orElseThrow();
    assertThat(complaint.choices().stream().map(Choice::code))
        .containsExactly("does-not-start", "no-suction", "weak");
    assertThat(complaint.choices().stream().map(Choice::next)).doesNotHaveDuplicates();
    assertThat(Guide.outcome("leak-to-seek").orElseThrow().of("SP-014").next())
        .contains("thumbseal seek-leak SP-014");
  }

  /** Terminal and document take a line of 400 and a text of 1000 characters. */
  @Test
  void textsAreLinesThatFit() {
    for (Question question : Guide.questions()) {
      assertThat(question.text()).hasSizeLessThan(380).doesNotContain("\n");
      assertThat(question.code()).matches("[a-z-]{1,40}");
      assertThat(question.choices()).isNotEmpty();
    }
    for (Outcome outcome : Guide.outcomes()) {
      assertThat(outcome.cause() + outcome.next()).hasSizeLessThan(380).doesNotContain("\n");
    }
    assertThat(Guide.outcomes().stream().map(Outcome::cause).collect(Collectors.toSet()))
        .hasSize(Guide.outcomes().size());
  }

  @Test
  void answersAreTakenAsPeopleTypeThem() {
    Question cord = Guide.question("cord-sound").orElseThrow();
    assertThat(cord.choice(" Y ").orElseThrow().code()).isEqualTo("yes");
    assertThat(cord.choice("NO").orElseThrow().code()).isEqualTo("no");
    assertThat(cord.choice("1")).isEmpty();
    assertThat(cord.choice("")).isEmpty();
    Question complaint = Guide.question("complaint").orElseThrow();
    assertThat(complaint.choice("3").orElseThrow().code()).isEqualTo("weak");
    assertThat(complaint.choice("weak").orElseThrow().code()).isEqualTo("weak");
    assertThat(complaint.choice("4")).isEmpty();
    assertThat(Guide.questions().get(0).choice("no")).isEmpty();
  }

  @Test
  void backTakesOneAnswerAway() {
    Walk begun = Walk.begun();
    Walk one = begun.with(begun.question().orElseThrow().choices().get(0));
    assertThat(one.back()).isEqualTo(begun);
    assertThat(begun.back()).isEqualTo(begun);
    Choice foreign = Guide.question("complaint").orElseThrow().choices().get(2);
    assertThatThrownBy(() -> one.with(foreign)).isInstanceOf(IllegalArgumentException.class);
  }
}

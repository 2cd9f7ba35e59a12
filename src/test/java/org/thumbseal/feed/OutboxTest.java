package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.thumbseal.archive.Sequenced;

/** What is sent in which order, by all short courses of events; nothing but memory. */
class OutboxTest {
  private static final String KID = "key";
  private static final int DOCUMENTS = 3;
  private static final int LONGEST = 7;

  /** What can befall an outbox. */
  private enum Event {
    /** The next is sent, and its acknowledgement comes. */
    ACKNOWLEDGED,
    /** The next is sent and refused. */
    REFUSED,
    /** The next is sent; neither is known to have arrived nor not. It did. */
    ANSWER_LOST,
    /** The next is sent and is lost on its way. */
    LOST,
    /** What is known is written down. */
    KEPT,
    /** The process ends and begins with what was written down. */
    RESTARTED,
    /** One more document is sealed. */
    SEALED,
    /** The directory is looked through. */
    LOOKED
  }

  /** One course of events: the outbox, and the truth about it. */
  private static final class World {
    private final List<Long> arrivals = new ArrayList<>();
    private final Set<Long> refused = new LinkedHashSet<>();
    private Outbox outbox = new Outbox(Progress.NONE);
    private Progress kept = Progress.NONE;
    private long sealed = DOCUMENTS;

    World() {
      look();
    }

    void take(Event event) {
      switch (event) {
        case KEPT -> kept = outbox.progress();
        case RESTARTED -> {
          outbox = new Outbox(kept);
          look();
        }
        case SEALED -> sealed++;
        case LOOKED -> look();
        default -> outbox.next().ifPresent(next -> send(next, event));
      }
    }

    private void send(Sequenced next, Event event) {
      if (event == Event.ACKNOWLEDGED || event == Event.ANSWER_LOST) {
        arrivals.add(next.sequence());
      }
      if (event == Event.ACKNOWLEDGED) {
        outbox.acknowledged(next);
      } else if (event == Event.REFUSED) {
        refused.add(next.sequence());
        outbox.refused(next, "too large");
      }
    }

    private void look() {
      List<Sequenced> all = new ArrayList<>();
      for (long number = 1; number <= sealed; number++) {
        if (outbox.progress().wants(KID, number)) {
          all.add(document(KID, number));
        }
      }
      outbox.found(all);
    }

    /** All goes well from here on, until nothing is left. */
    void finish() {
      look();
      while (outbox.next().isPresent()) {
        take(Event.ACKNOWLEDGED);
      }
    }
  }

  private static Sequenced document(String kid, long number) {
    return new Sequenced(kid, number, Path.of("2026", "2026030" + number + "_A.json"));
  }

  @Test
  void inEveryCourseOfEventsEachArrivesInOrder() {
    long courses = 0;
    for (int length = 1; length <= LONGEST; length++) {
      courses += tryAll(new ArrayList<>(), length);
    }
    assertThat(courses).isEqualTo(sumOfPowers(Event.values().length, LONGEST));
  }

  private static long sumOfPowers(long base, int longest) {
    long sum = 0;
    long power = 1;
    for (int i = 0; i < longest; i++) {
      power *= base;
      sum += power;
    }
    return sum;
  }

  private static long tryAll(List<Event> course, int length) {
    if (course.size() == length) {
      run(course);
      return 1;
    }
    long tried = 0;
    for (Event event : Event.values()) {
      course.add(event);
      tried += tryAll(course, length);
      course.remove(course.size() - 1);
    }
    return tried;
  }

  private static void run(List<Event> course) {
    World world = new World();
    course.forEach(world::take);
    world.finish();
    List<Long> first = List.copyOf(new LinkedHashSet<>(world.arrivals));
    for (long number = 1; number <= world.sealed; number++) {
      if (!first.contains(number) && !world.refused.contains(number)) {
        throw new AssertionError(number + " is lost after " + course);
      }
    }
    // One that was refused and then taken, after a restart, is the only one that may be late.
    List<Long> steady = first.stream().filter(n -> !world.refused.contains(n)).toList();
    if (!steady.equals(steady.stream().sorted().toList())) {
      throw new AssertionError(first + " is out of order after " + course);
    }
    if (!course.contains(Event.RESTARTED)) {
      long lost = course.stream().filter(e -> e == Event.ANSWER_LOST).count();
      if (world.arrivals.size() - first.size() > lost) {
        throw new AssertionError(world.arrivals + ": sent too often after " + course);
      }
    }
  }

  @Test
  void whatIsRefusedIsPutAsideAndTriedAgainWhenAsked() {
    Outbox outbox = outbox(Progress.NONE, 1, 2, 3);
    outbox.acknowledged(document(KID, 1));
    outbox.refused(document(KID, 2), "too large");
    outbox.acknowledged(document(KID, 3));
    assertThat(outbox.progress().upTo(KID)).isEqualTo(3);
    assertThat(outbox.progress().refused()).containsExactly(new Gap(KID, 2, 2, "too large"));
    assertThat(outbox(outbox.progress(), 1, 2, 3).next()).isEmpty();
    Outbox again = outbox(outbox.progress().again(), 1, 2, 3);
    assertThat(again.next()).contains(document(KID, 2));
    again.acknowledged(document(KID, 2));
    assertThat(again.progress()).isEqualTo(new Progress(Map.of(KID, 3L), List.of()));
  }

  @Test
  void whatWasNotThereIsSentWhenItIs() {
    Outbox outbox = outbox(Progress.NONE, 1, 5);
    outbox.acknowledged(document(KID, 1));
    outbox.acknowledged(document(KID, 5));
    outbox.lookedThrough(Map.of(KID, 7L));
    assertThat(outbox.progress().gaps())
        .containsExactly(new Gap(KID, 2, 4, ""), new Gap(KID, 6, 7, ""));
    assertThat(outbox.progress().behind(Map.of(KID, 7L))).isZero();
    Outbox later = outbox(outbox.progress(), 1, 3, 5, 8);
    later.acknowledged(document(KID, 3));
    assertThat(later.next()).contains(document(KID, 8));
    assertThat(later.progress().gaps())
        .containsExactly(new Gap(KID, 6, 7, ""), new Gap(KID, 2, 2, ""), new Gap(KID, 4, 4, ""));
  }

  @Test
  void betweenKeysTheEarlierTestGoesFirst() {
    Outbox outbox = new Outbox(Progress.NONE);
    Sequenced early = new Sequenced("b", 1, Path.of("2026", "20260301T000000Z_A_pass_1.json"));
    Sequenced late = new Sequenced("a", 1, Path.of("2026", "20260302T000000Z_A_pass_2.json"));
    outbox.found(List.of(late, early));
    assertThat(outbox.next()).isEqualTo(Optional.of(early));
    outbox.acknowledged(early);
    assertThat(outbox.next()).isEqualTo(Optional.of(late));
  }

  private static Outbox outbox(Progress progress, long... numbers) {
    Outbox outbox = new Outbox(progress);
    List<Sequenced> all = new ArrayList<>();
    for (long number : numbers) {
      all.add(document(KID, number));
    }
    outbox.found(all);
    return outbox;
  }
}

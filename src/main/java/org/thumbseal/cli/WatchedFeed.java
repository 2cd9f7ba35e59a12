package org.thumbseal.cli;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.BenchListeners;
import org.thumbseal.feed.FeedBegin;
import org.thumbseal.feed.FeedFollower;
import org.thumbseal.feed.FeedPlace;
import org.thumbseal.feed.FeedState;
import org.thumbseal.feed.FeedSurroundings;
import org.thumbseal.feed.FeedTarget;
import org.thumbseal.feed.Feeder;
import org.thumbseal.link.HostClock;

/** Sends on what a watch stores, if a target is named. */
final class WatchedFeed {
  /** After each document, so that sending thousands leaves a small board to the sensors. */
  private static final Duration BREATH = Duration.ofMillis(20);

  private final Optional<FeedTarget> target;
  private final BenchListener printer;
  private volatile Optional<FeedFollower> follower = Optional.empty();

  WatchedFeed(Optional<FeedTarget> target, BenchListener printer) {
    this.target = target;
    this.printer = printer;
  }

  /** This listener, and the feed where there is one. */
  BenchListener listening(BenchListener others) {
    return target.isEmpty()
        ? others
        : new BenchListeners(List.of(others, new WhenStored(this::stored)));
  }

  /** Begins to send what lies there, and what is stored there from now on. */
  void follow(FeedPlace place) {
    FeedSurroundings around = new FeedSurroundings(HostClock.system(), printer::notice, BREATH);
    var rhythm = FeedFollower.Rhythm.standard(new SplittableRandom()::nextDouble);
    follower =
        target.map(
            to ->
                FeedFollower.start(
                    () -> Feeder.open(place, to, FeedBegin.GO_ON, around), rhythm, around));
  }

  /** For the line about health. */
  String line() {
    return follower.map(FeedFollower::state).map(FeedState::line).orElse("");
  }

  private void stored() {
    follower.ifPresent(FeedFollower::stored);
  }

  void close() {
    follower.ifPresent(FeedFollower::close);
  }
}

package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.BenchListeners;
import org.thumbseal.index.RecordsAddress;
import org.thumbseal.index.RecordsFollower;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.TrustStore;

/** The records index that a watch keeps in step, if one is named. */
final class WatchedRecords {
  private final Optional<RecordsAddress> address;
  private final BenchListener printer;
  private volatile Optional<RecordsFollower> follower = Optional.empty();

  WatchedRecords(Optional<RecordsAddress> address, BenchListener printer) {
    this.address = address;
    this.printer = printer;
  }

  /** This listener, and the index where there is one. */
  BenchListener listening(BenchListener others) {
    return address.isEmpty() ? others : new BenchListeners(List.of(others, new Stored()));
  }

  /** Begins to take in what lies in a directory, and what is stored there from now on. */
  void follow(Path results, TrustStore trust) {
    follower =
        address.map(
            base ->
                RecordsFollower.start(
                    new RecordsFollower.Place(base, results, trust), printer::notice));
  }

  void close() {
    follower.ifPresent(RecordsFollower::close);
  }

  /** Passes on that something was stored; nothing here waits. */
  private final class Stored implements BenchListener {
    @Override
    public void phase(String port, PhaseEvent.Entered phase) {}

    @Override
    public void result(String port, ResultDocument result, Path file) {
      follower.ifPresent(RecordsFollower::stored);
    }

    @Override
    public void waiting(String port, ResultDocument result) {}

    @Override
    public void notice(String text) {}
  }
}

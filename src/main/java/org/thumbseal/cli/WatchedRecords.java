package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.BenchListeners;
import org.thumbseal.index.RecordsAddress;
import org.thumbseal.index.RecordsFollower;
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
    return address.isEmpty()
        ? others
        : new BenchListeners(List.of(others, new WhenStored(this::stored)));
  }

  /** Begins to take in what lies in a directory, and what is stored there from now on. */
  void follow(Path results, TrustStore trust) {
    follower =
        address.map(
            base ->
                RecordsFollower.start(
                    new RecordsFollower.Place(base, results, trust), printer::notice));
  }

  private void stored() {
    follower.ifPresent(RecordsFollower::stored);
  }

  void close() {
    follower.ifPresent(RecordsFollower::close);
  }
}

package org.thumbseal.cli;

import java.util.Optional;
import org.thumbseal.calibration.SteadyReading;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.LineAssembler;
import org.thumbseal.wire.LineFormat;
import org.thumbseal.wire.PlainLines;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/** What a sensor reads at the moment. */
final class LiveReadings {
  private static final int BUFFER = 1_024;

  private final LinkConnection connection;
  private final Optional<String> expected;
  private final LineFormat format;
  private final SteadyReading steady = new SteadyReading();
  private final SampleStream stream;
  private final LineAssembler assembler;
  private final byte[] buffer = new byte[BUFFER];

  /**
   * Readings that come over an open link.
   *
   * @param expected id of the sensor, where only one will do
   * @param format how it writes its lines
   * @param clock of this computer, for lines that bear no time
   */
  LiveReadings(
      LinkConnection connection, Optional<String> expected, LineFormat format, HostClock clock) {
    this.connection = connection;
    this.expected = expected;
    this.format = format;
    this.stream = new SampleStream(format, this::take);
    this.assembler = new LineAssembler(text -> stream.accept(clock.nanos() / 1_000, text));
  }

  private void take(StreamEvent event) {
    if (event instanceof Sample sample) {
      steady.accept(sample.seconds(), -sample.pascals() / 1_000);
    } else if (event instanceof Restart) {
      steady.forget();
    }
  }

  /**
   * Reads on, for a third of a second at most; gives how many bytes came, or that it is over.
   *
   * @throws Failure if another sensor speaks
   */
  int read() {
    int count = connection.read(buffer);
    assembler.accept(buffer, 0, Math.max(count, 0));
    identity().map(Identity::sensorId).ifPresent(this::check);
    return count;
  }

  private void check(String speaking) {
    if (expected.isPresent() && !expected.get().equals(speaking)) {
      throw Failure.usage(
          "the sensor says it is " + speaking + ", not " + expected.get() + "; nothing stored");
    }
  }

  /** Vacuum on the sensor's own scale, kPa, where it stands still. */
  Optional<Double> settled() {
    return steady.settled();
  }

  /** What its readings count from: as it says itself, else as the format has it. */
  Reference reference() {
    return identity()
        .map(Identity::reference)
        .or(() -> format.plain().map(PlainLines::reference))
        .orElse(Reference.GAUGE);
  }

  Optional<Identity> identity() {
    return stream.identity();
  }
}

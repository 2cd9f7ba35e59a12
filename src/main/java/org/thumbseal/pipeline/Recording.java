package org.thumbseal.pipeline;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.capture.BareRecording;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseDetector;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.PlainLines;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/** A whole record, run through once: the tests in it and all that is known around them. */
final class Recording {
  /** In a record there is time to see the pump come to rest after a test, s. */
  private static final double TAIL = 15;

  /** Years have four digits; a host time that leads beyond them gives no date. */
  private static final Instant BEYOND_RFC_3339 = Instant.parse("+10000-01-01T00:00:00Z");

  private final PhaseDetector detector = new PhaseDetector(TAIL, this::note);
  private final SampleStream stream;
  private final StartFeed feed;
  private final List<FoundTest> tests = new ArrayList<>();
  private final Map<String, Integer> rejected = new HashMap<>();
  private final CaptureHeader header;
  private Optional<Identity> sensor = Optional.empty();
  private Optional<Ambient> ambient = Optional.empty();
  private boolean dated = true;
  private int tested;
  private int notBlocked;
  private Reference reference;
  private double firstSampleHostSeconds;
  private long samples;
  private long gaps;

  private Recording(CaptureHeader header) {
    this.header = header;
    this.stream = new SampleStream(header.lineFormat(), this::take);
    this.feed = new StartFeed(stream, header);
    this.reference = header.lineFormat().plain().map(PlainLines::reference).orElse(Reference.GAUGE);
  }

  /** Runs a capture through decoder, device clock and detector. */
  static Recording of(Capture capture) {
    Recording recording = new Recording(capture.header());
    capture.lines().forEach(line -> recording.feed.accept(line.hostMicros(), line.text()));
    recording.finish(capture.unreadable());
    return recording;
  }

  /** The same, line by line from a file of any length. */
  static Recording of(CaptureReader capture) throws IOException {
    Recording recording = new Recording(capture.header());
    capture.forEachLine(line -> recording.feed.accept(line.hostMicros(), line.text()));
    recording.finish(capture.unreadable());
    return recording;
  }

  /** Runs bare lines through the same; they came at no known time. */
  static Recording of(BareRecording bare, String source) {
    Map<String, String> facts =
        Map.of("source", source, CaptureHeader.FORMAT, bare.format().text());
    Recording recording = new Recording(new CaptureHeader(Instant.EPOCH, facts));
    recording.dated = false;
    bare.lines().forEach(line -> recording.stream.accept(0, line));
    recording.finish(0);
    return recording;
  }

  private void finish(int unreadable) {
    stream.end();
    stream.rejected().forEach((cause, count) -> reject(cause.code(), count));
    reject("unreadable", unreadable);
    detector.end();
  }

  /** Runs the samples of another program's table through the detector. */
  static Recording of(TableRecord table) {
    Recording recording = new Recording(table.header());
    recording.reference = table.reference();
    recording.dated = table.dated();
    table.events().forEach(recording::take);
    table.rejected().forEach(recording::reject);
    recording.detector.end();
    return recording;
  }

  private void take(StreamEvent event) {
    if (event instanceof Sample sample) {
      firstSampleHostSeconds = samples == 0 ? sample.hostSeconds() : firstSampleHostSeconds;
      samples++;
    } else if (event instanceof Gap) {
      gaps++;
    }
    detector.accept(event);
  }

  private void note(PhaseEvent event) {
    if (event instanceof PhaseEvent.Tested) {
      Optional<Identity> said = sensor.or(stream::identity);
      tests.add(found(event, said, ambient.or(stream::ambient), ++tested));
    } else if (event instanceof PhaseEvent.NotBlocked) {
      tests.add(found(event, stream.identity(), stream.ambient(), -notBlocked++));
    } else if (event instanceof PhaseEvent.Entered entered && entered.phase() == Phase.RISE) {
      sensor = stream.identity();
      ambient = stream.ambient();
    }
  }

  private FoundTest found(
      PhaseEvent event, Optional<Identity> said, Optional<Ambient> air, int ordinal) {
    Reference counted = said.map(Identity::reference).orElse(reference);
    return new FoundTest(event, said, air, counted, ordinal);
  }

  private void reject(String cause, int count) {
    if (count > 0) {
      rejected.merge(cause, count, Integer::sum);
    }
  }

  List<FoundTest> tests() {
    return tests;
  }

  /** What is known of the lines, where they have no checksum. */
  Optional<PlainLines> plain() {
    return header.lineFormat().plain();
  }

  CaptureHeader header() {
    return header;
  }

  Optional<Instant> firstSampleAt() {
    return dated
        ? Optional.of(header.started().plusNanos(Math.round(firstSampleHostSeconds * 1e9)))
            .filter(at -> at.isBefore(BEYOND_RFC_3339))
        : Optional.empty();
  }

  long samples() {
    return samples;
  }

  long gaps() {
    return gaps;
  }

  Map<String, Integer> rejected() {
    return rejected;
  }
}

package org.thumbseal.fuzz;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ResultTree;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.LiveListener;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.wire.LineAssembler;

/**
 * Whole sessions over a bad line: some of a hundred lines spoilt, then through device clock,
 * detector and grading, as the daemon does it.
 */
final class SessionTarget implements Target {
  private final List<Capture> sessions = new ArrayList<>();
  private long lines;
  private long spoilt;
  private long strange;
  private long samples;
  private long results;

  SessionTarget() throws Exception {
    for (byte[] capture : Genuine.captures()) {
      sessions.add(CaptureReader.read(capture));
    }
  }

  @Override
  public Attempt next(Dice dice) {
    Capture session = dice.of(sessions);
    int share = dice.between(2, 60);
    List<CaptureLine> received = new ArrayList<>();
    for (CaptureLine line : session.lines()) {
      CaptureLine donor = dice.of(session.lines());
      received.addAll(dice.oneIn(share) ? spoil(line, donor, dice) : List.of(line));
    }
    return new Attempt() {
      @Override
      public byte[] input() {
        return Bytes.latin(String.join("\n", received.stream().map(CaptureLine::format).toList()));
      }

      @Override
      public void run() {
        follow(session, received);
        grade(session.header(), received);
      }
    };
  }

  private List<CaptureLine> spoil(CaptureLine line, CaptureLine donor, Dice dice) {
    spoilt++;
    List<CaptureLine> out = new ArrayList<>();
    LineAssembler cut =
        new LineAssembler(text -> out.add(new CaptureLine(line.hostMicros(), text)));
    byte[] bytes =
        Mutation.some(Bytes.latin(line.text() + "\n"), Bytes.latin(donor.text() + "\n"), dice);
    cut.accept(bytes, 0, bytes.length);
    return out;
  }

  /** How many samples come out that no line of the session held. */
  private void follow(Capture session, List<CaptureLine> received) {
    Set<String> sent = new HashSet<>();
    session.lines().forEach(line -> sent.add(line.text()));
    Map<Long, String> arrivals = new HashMap<>();
    SampleStream stream = new SampleStream(event -> count(event, arrivals, sent));
    long micros = 0;
    for (CaptureLine line : received) {
      micros = Math.max(micros + 1, line.hostMicros());
      arrivals.put(micros, line.text());
      stream.accept(micros, line.text());
      lines++;
    }
    stream.end();
  }

  private void count(StreamEvent event, Map<Long, String> arrivals, Set<String> sent) {
    if (event instanceof StreamEvent.Sample sample) {
      samples++;
      String line = arrivals.getOrDefault(Math.round(sample.hostSeconds() * 1e6), "");
      strange += sent.contains(line) ? 0 : 1;
    }
  }

  private void grade(CaptureHeader header, List<CaptureLine> received) {
    LiveStream live = new LiveStream(header, new Graded());
    long micros = 0;
    for (CaptureLine line : received) {
      micros = Math.max(micros, line.hostMicros());
      live.accept(micros, line.text());
    }
    live.end();
    grade(new Capture(header, received, 0));
  }

  private final class Graded implements LiveListener {
    @Override
    public void phase(PhaseEvent.Entered phase) {}

    @Override
    public void test(Capture capture) {
      grade(capture);
    }
  }

  private void grade(Capture capture) {
    Grader.Source source = Grader.Source.capture("session.log", "0".repeat(64));
    Grader.grade(capture, source, GradingSettings.DEFAULT)
        .forEach(result -> results += Canonical.text(ResultTree.of(result)).isEmpty() ? 0 : 1);
  }

  @Override
  public void settle() {
    double byChance = spoilt * 4.0 / 65_536;
    if (WireCounts.atLeast(strange, byChance) < 1e-6) {
      throw new AssertionError("more samples of spoilt lines than chance allows: " + figures());
    }
  }

  @Override
  public String figures() {
    return String.format(
        "%d lines, %d spoilt, %d samples, %d of them from a spoilt line, %d results%n",
        lines, spoilt, samples, strange, results);
  }
}

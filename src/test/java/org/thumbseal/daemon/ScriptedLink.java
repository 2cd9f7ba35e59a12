package org.thumbseal.daemon;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.ManualClock;
import org.thumbseal.wire.Crc16;

/** A link that does what a test wrote down: opening after opening, read after read. */
final class ScriptedLink implements Link {
  /** One read. */
  interface Step {
    int read(byte[] buffer);
  }

  /** One opening. */
  interface Opening {
    List<Step> open() throws LinkUnavailable;
  }

  final ManualClock clock = new ManualClock();
  final List<Duration> openedAt = new ArrayList<>();
  private final Deque<Opening> openings = new ArrayDeque<>();
  private boolean finite;
  private boolean network;
  private Duration stall = Duration.ZERO;
  private OptionalLong arrivedMicros = OptionalLong.empty();
  private Duration age = Duration.ZERO;
  private Duration settle = Duration.ZERO;
  private Runnable whenDone = () -> {};
  private int closed;
  private Optional<String> other = Optional.empty();

  static String good(String body) {
    return Crc16.seal(body);
  }

  ScriptedLink opening(Step... steps) {
    openings.add(() -> List.of(steps));
    return this;
  }

  ScriptedLink refusing(Reason reason, String message) {
    openings.add(
        () -> {
          throw new LinkUnavailable(reason, message);
        });
    return this;
  }

  ScriptedLink thatEnds() {
    finite = true;
    return this;
  }

  /** It is no port of this computer, and may hold back what was sent for so long. */
  ScriptedLink network(Duration longestStall) {
    network = true;
    stall = longestStall;
    return this;
  }

  /** It has a time of its own, in which everything comes at this moment. */
  ScriptedLink arrivingAt(long micros) {
    arrivedMicros = OptionalLong.of(micros);
    return this;
  }

  /** That time was running for so long before anybody read. */
  ScriptedLink aged(Duration before) {
    age = before;
    return this;
  }

  /** Another program has it open. */
  ScriptedLink alsoOpenIn(String program) {
    other = Optional.of(program);
    return this;
  }

  ScriptedLink settling(Duration time) {
    settle = time;
    return this;
  }

  /** What happens when the script is at its end. */
  ScriptedLink whenDone(Runnable action) {
    whenDone = action;
    return this;
  }

  Step bytes(String text) {
    return buffer -> {
      byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
      System.arraycopy(bytes, 0, buffer, 0, bytes.length);
      return bytes.length;
    };
  }

  /** Time goes by and nothing comes. */
  Step silence(Duration time) {
    return buffer -> {
      clock.advance(time);
      return 0;
    };
  }

  Step after(Duration time, String text) {
    return buffer -> {
      clock.advance(time);
      return bytes(text).read(buffer);
    };
  }

  Step lost() {
    return buffer -> LinkConnection.LOST;
  }

  int timesClosed() {
    return closed;
  }

  @Override
  public String name() {
    return "scripted";
  }

  @Override
  public boolean finite() {
    return finite;
  }

  @Override
  public Duration settle() {
    return settle;
  }

  @Override
  public Duration stall() {
    return stall;
  }

  @Override
  public boolean isPort() {
    return !network;
  }

  @Override
  public Optional<String> otherProgram() {
    return other;
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    openedAt.add(Duration.ofNanos(clock.nanos()));
    if (openings.isEmpty()) {
      whenDone.run();
      throw new LinkUnavailable(Reason.MISSING, "the script is at its end");
    }
    return new Connection(new ArrayDeque<>(openings.remove().open()));
  }

  private final class Connection implements LinkConnection {
    private final Deque<Step> steps;

    Connection(Deque<Step> steps) {
      this.steps = steps;
    }

    @Override
    public int read(byte[] buffer) {
      if (steps.isEmpty()) {
        whenDone.run();
        return LOST;
      }
      return steps.remove().read(buffer);
    }

    @Override
    public OptionalLong arrivedMicros() {
      return arrivedMicros;
    }

    @Override
    public Duration age() {
      return age;
    }

    @Override
    public void close() {
      closed++;
    }
  }
}

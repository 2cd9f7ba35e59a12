package org.thumbseal.link;

import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineAssembler;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.WireRecord.Identity;

/**
 * Finds out by listening who is at the other end of a port; nothing is ever written to it.
 *
 * @param clock what the patience is measured by
 * @param patience how long to listen at most, not counting the settle time of the link
 */
public record PortProbe(HostClock clock, Duration patience) {
  /** A sensor says who it is every 2 s. */
  public static final Duration ONE_IDENTITY = Duration.ofMillis(2_500);

  /**
   * The same after a start of up to 3 s, where it is not known what the opening does to a board.
   */
  public static final Duration AFTER_A_START = Duration.ofMillis(5_500);

  /** Opens the link, listens, and closes it again. */
  public PortAnswer listen(Link link) {
    try (LinkConnection connection = link.open()) {
      return listen(connection, link.settle());
    } catch (LinkUnavailable e) {
      return new PortAnswer.Closed(e);
    }
  }

  /** Listens on what is open already, and leaves it open. */
  PortAnswer listen(LinkConnection connection, Duration settle) {
    Hearing hearing = new Hearing();
    long end = clock.nanos() + patience.plus(settle).toNanos();
    byte[] buffer = new byte[4_096];
    int count = 0;
    while (count >= 0 && hearing.identity == null && clock.nanos() - end < 0) {
      count = connection.read(buffer);
      hearing.hear(buffer, Math.max(count, 0));
    }
    return hearing.answer();
  }

  private static final class Hearing {
    private final LineAssembler assembler = new LineAssembler(this::line);
    private @Nullable Identity identity;
    private long bytes;
    private long goodLines;

    void hear(byte[] buffer, int count) {
      bytes += count;
      assembler.accept(buffer, 0, count);
    }

    private void line(String text) {
      if (LineDecoder.decode(text) instanceof Decoded.Good good) {
        goodLines++;
        if (good.content() instanceof Identity who) {
          identity = who;
        }
      }
    }

    PortAnswer answer() {
      return Optional.ofNullable(identity)
          .<PortAnswer>map(PortAnswer.Sensor::new)
          .orElseGet(
              () -> bytes == 0 ? new PortAnswer.Silence() : new PortAnswer.Stranger(goodLines));
    }
  }
}

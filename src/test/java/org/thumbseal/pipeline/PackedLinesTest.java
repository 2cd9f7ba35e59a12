package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.thumbseal.capture.CaptureLine;

/** Against the queue of the Java library, with lines of every length and every byte. */
class PackedLinesTest {
  private static final long SEED = 3;

  private final Random random = new Random(SEED);
  private final PackedLines packed = new PackedLines();
  private final Deque<CaptureLine> plain = new ArrayDeque<>();

  private CaptureLine line(long micros) {
    int length = random.nextInt(500) == 0 ? 20_000 : random.nextInt(60);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append((char) random.nextInt(256));
    }
    return new CaptureLine(micros, text.toString());
  }

  @Test
  void whatIsTakenOutIsWhatWasPutInInItsOrder() {
    for (int i = 0; i < 30_000; i++) {
      if (random.nextInt(5) < (i % 10_000 < 5_000 ? 3 : 1)) {
        CaptureLine line = line(i * 5_000L);
        packed.add(line);
        plain.addLast(line);
        assertThat(packed.lastMicros()).isEqualTo(line.hostMicros());
      } else if (!plain.isEmpty()) {
        assertThat(packed.firstMicros()).isEqualTo(plain.getFirst().hostMicros());
        assertThat(packed.removeFirst()).isEqualTo(plain.removeFirst());
      }
      assertThat(packed.size()).isEqualTo(plain.size());
      assertThat(packed.isEmpty()).isEqualTo(plain.isEmpty());
      if (i % 1_000 == 0) {
        assertThat(packed.all()).isEqualTo(new ArrayList<>(plain));
      }
    }
  }
}

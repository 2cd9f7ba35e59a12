package org.thumbseal.daemon;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicBoolean;
import org.thumbseal.capture.Capture;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.LiveListener;
import org.thumbseal.pipeline.LiveStream;

/** What of a file cut off anywhere is a capture. */
final class WholeRecord {
  private WholeRecord() {}

  /** The bytes up to the last whole line, as the live test would have been graded from them. */
  static byte[] read(Path file, long largest) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new IOException("it is no file");
    }
    if (Files.size(file) > largest) {
      throw new IOException("it is larger than any of ours");
    }
    byte[] bytes = Files.readAllBytes(file);
    int end = bytes.length;
    while (end > 0 && bytes[end - 1] != '\n') {
      end--;
    }
    return Arrays.copyOf(bytes, end);
  }

  /** Whether more than an idle sensor is to be seen in it. */
  static boolean isPumpRunning(Capture capture) {
    AtomicBoolean running = new AtomicBoolean();
    LiveListener listener =
        new LiveListener() {
          @Override
          public void phase(PhaseEvent.Entered phase) {
            running.compareAndSet(false, phase.phase() != Phase.IDLE);
          }

          @Override
          public void test(Capture test) {
            running.set(true);
          }
        };
    LiveStream stream = new LiveStream(capture.header(), listener);
    capture.lines().forEach(line -> stream.accept(line.hostMicros(), line.text()));
    stream.end();
    return running.get();
  }
}

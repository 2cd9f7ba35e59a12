package org.thumbseal.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** Lines that a person types while something else goes on; a daemon thread waits for them. */
final class TypedLines {
  private final BlockingQueue<Line> lines = new LinkedBlockingQueue<>();

  /** A line without its end, or that there will be no more. */
  record Line(String text, boolean isEnd) {}

  TypedLines(InputStream in) {
    Thread thread = new Thread(() -> read(in), "typed-lines");
    thread.setDaemon(true);
    thread.start();
  }

  private void read(InputStream in) {
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String text = reader.readLine(); text != null; text = reader.readLine()) {
        lines.add(new Line(text, false));
      }
    } catch (IOException e) {
      // A terminal that is gone types nothing more.
    } finally {
      lines.add(new Line("", true));
    }
  }

  /** A line that is there already. */
  Optional<Line> poll() {
    return Optional.ofNullable(lines.poll());
  }

  /** Waits for a line. */
  Line take() {
    try {
      return lines.take();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Line("", true);
    }
  }
}

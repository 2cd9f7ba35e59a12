package org.thumbseal.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.simulate.TimedLine;

/** Lines as in a capture file, below its header. */
final class CaptureLines implements LineSink {
  private final BufferedWriter file;

  private CaptureLines(BufferedWriter file) {
    this.file = file;
  }

  static CaptureLines to(Path path, CaptureHeader header) throws IOException {
    BufferedWriter file = Files.newBufferedWriter(path, StandardCharsets.UTF_8);
    file.write(header.format());
    return new CaptureLines(file);
  }

  @Override
  public void write(TimedLine line) throws IOException {
    file.write(new CaptureLine(line.hostMicros(), line.line()).format());
    file.write('\n');
  }

  @Override
  public void flush() throws IOException {
    file.flush();
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}

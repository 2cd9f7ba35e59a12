package org.thumbseal.pipeline;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.visit.SaidStart;

/**
 * Brings a start that stands in the header to its place among the lines: after the last one that
 * had come when it was said.
 */
final class StartFeed {
  private final SampleStream stream;
  private @Nullable SaidStart next;

  StartFeed(SampleStream stream, CaptureHeader header) {
    this.stream = stream;
    this.next = said(header).orElse(null);
  }

  static Optional<SaidStart> said(CaptureHeader header) {
    return header.fact(SaidStart.KEY).flatMap(SaidStart::parse);
  }

  void accept(long hostMicros, String line) {
    SaidStart start = next;
    if (start != null && start.hostMicros() < hostMicros) {
      next = null;
      stream.startSaid(start.hostMicros());
    }
    stream.accept(hostMicros, line);
  }
}

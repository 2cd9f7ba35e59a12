package org.thumbseal.daemon;

import java.time.Instant;

/** One call to a handler, on its way from the reader to it. */
sealed interface Happening {
  void tell(SessionHandler handler);

  record Opened(Instant wallClock, String source) implements Happening {
    @Override
    public void tell(SessionHandler handler) {
      handler.opened(wallClock, source);
    }
  }

  record Line(long hostMicros, String text) implements Happening {
    @Override
    public void tell(SessionHandler handler) {
      handler.line(hostMicros, text);
    }
  }

  record Quiet(long hostMicros) implements Happening {
    @Override
    public void tell(SessionHandler handler) {
      handler.quiet(hostMicros);
    }
  }

  record Lost(long hostMicros, long lines) implements Happening {
    @Override
    public void tell(SessionHandler handler) {
      handler.lost(hostMicros, lines);
    }
  }

  record Closed(long hostMicros, String why) implements Happening {
    @Override
    public void tell(SessionHandler handler) {
      handler.closed(hostMicros, why);
    }
  }

  /** Nothing comes after it. */
  record Last() implements Happening {
    @Override
    public void tell(SessionHandler handler) {}
  }
}

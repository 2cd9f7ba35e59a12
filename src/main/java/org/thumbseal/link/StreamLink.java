package org.thumbseal.link;

import java.io.InputStream;
import java.util.concurrent.atomic.AtomicBoolean;
import org.thumbseal.link.LinkUnavailable.Reason;

/** A stream that is already open, such as standard input; it can be read once. */
final class StreamLink implements Link {
  private final String name;
  private final InputStream in;
  private final AtomicBoolean used = new AtomicBoolean();

  StreamLink(String name, InputStream in) {
    this.name = name;
    this.in = in;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public boolean finite() {
    return true;
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    if (used.getAndSet(true)) {
      throw new LinkUnavailable(Reason.BUSY, "standard input can be read only once");
    }
    return StreamConnection.over(in);
  }
}

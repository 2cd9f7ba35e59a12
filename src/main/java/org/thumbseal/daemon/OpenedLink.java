package org.thumbseal.daemon;

import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.link.LinkUnavailable;

/**
 * A link that is open before anybody looks after it, so that a mistake in its address shows before
 * anything is made on the disk. It is not opened twice for that: some boards start anew each time.
 */
public final class OpenedLink implements Link, AutoCloseable {
  /** What came before somebody read has arrived at a time that is not known. */
  private static final Duration STALE = Duration.ofMillis(100);

  private final Link link;
  private @Nullable LinkConnection first;

  private OpenedLink(Link link, LinkConnection first) {
    this.link = link;
    this.first = first;
  }

  /**
   * Opens a link.
   *
   * @throws LinkUnavailable if that fails
   */
  public static OpenedLink of(Link link) throws LinkUnavailable {
    return new OpenedLink(link, link.open());
  }

  /** A link and its connection, made before; {@code open} is closed with it if nobody took it. */
  public static OpenedLink of(Link link, LinkConnection open) {
    return new OpenedLink(link, open);
  }

  @Override
  public String name() {
    return link.name();
  }

  /** The first time the connection that is there; then a new one each time. */
  @Override
  public synchronized LinkConnection open() throws LinkUnavailable {
    LinkConnection there = first;
    first = null;
    return there != null ? there : link.open();
  }

  @Override
  public boolean finite() {
    return link.finite();
  }

  @Override
  public Duration settle() {
    return finite() ? link.settle() : link.settle().plus(STALE);
  }

  @Override
  public Duration stall() {
    return link.stall();
  }

  @Override
  public boolean isPort() {
    return link.isPort();
  }

  @Override
  public Optional<String> otherProgram() {
    return link.otherProgram();
  }

  /** Lets go of the connection if nobody took it. */
  @Override
  public synchronized void close() {
    LinkConnection there = first;
    first = null;
    if (there != null) {
      there.close();
    }
  }
}

package org.thumbseal.link;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.SensorSearch.Looked;

/**
 * A sensor that is not plugged in yet, on whatever port it comes: opening looks for it. Where it
 * was last is tried first; when that is not there any more, all ports are looked at again.
 */
public final class AwaitedSensor implements Link {
  private final LinkAddress.Serial address;
  private final SensorSearch search;
  private @Nullable Link last;

  /** Takes the address that stands for any port, and the search. */
  public AwaitedSensor(LinkAddress.Serial address, SensorSearch search) {
    this.address = address;
    this.search = search;
  }

  @Override
  public String name() {
    return address.text();
  }

  @Override
  public boolean finite() {
    return false;
  }

  @Override
  public boolean isPort() {
    return true;
  }

  @Override
  public Optional<String> otherProgram() {
    Link there = last;
    return there == null ? Optional.empty() : there.otherProgram();
  }

  @Override
  public Duration settle() {
    return address.settings().settle();
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    Link before = last;
    if (before == null) {
      return first(search.look());
    }
    try {
      return before.open();
    } catch (LinkUnavailable e) {
      if (e.reason() != Reason.MISSING) {
        throw e;
      }
      last = null;
      return first(search.look());
    }
  }

  /** The others are let go: one link is one sensor. */
  private LinkConnection first(List<Looked> all) throws LinkUnavailable {
    LinkConnection found = null;
    for (Looked one : all) {
      Optional<LinkConnection> open = one.connection();
      if (found != null) {
        open.ifPresent(LinkConnection::close);
      } else if (open.isPresent()) {
        found = open.get();
        last = one.link();
      }
    }
    if (found == null) {
      throw new LinkUnavailable(Reason.MISSING, "no sensor found" + lookedAt(all));
    }
    return found;
  }

  private static String lookedAt(List<Looked> all) {
    return all.stream()
        .map(one -> one.link().name())
        .collect(Collectors.joining(", ", " (looked at: ", ")"))
        .replace(" (looked at: )", " (no serial port on USB)");
  }
}

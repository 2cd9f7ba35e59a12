package org.thumbseal.cli;

import java.util.List;
import java.util.Optional;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.BenchListeners;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.page.LiveBench;
import org.thumbseal.page.PageAddress;
import org.thumbseal.page.PageServer;
import org.thumbseal.pipeline.GradingSettings;

/** The page of a bench that is watched, if one is wanted. */
final class WatchedPage {
  private final HostClock clock = HostClock.system();
  private final PageOptions options;
  private final Optional<PageAddress> address;
  private final LiveBench live;

  WatchedPage(PageOptions options, List<Link> links, GradingSettings settings) {
    this.options = options;
    this.address = options.address();
    this.live = new LiveBench(links.stream().map(Link::name).toList(), settings, clock);
  }

  /** This listener, and the page where there is one. */
  BenchListener listening(BenchListener printer) {
    return address.isEmpty() ? printer : new BenchListeners(List.of(live, printer));
  }

  /** Serves it; what it gives lets go of it, and may be called twice. */
  Runnable serve(Bench bench, PageOptions.Place place) {
    if (address.isEmpty()) {
      return () -> {};
    }
    String results = place.results().toAbsolutePath().normalize().getFileName().toString();
    return options.serve(
        address.get(),
        new PageServer.Served(
            live,
            bench.desks(),
            clock,
            new PageServer.Setting(results, bench.sealing(), options.stations())),
        place);
  }
}

package org.thumbseal.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.guided.Stations;
import org.thumbseal.json.Printable;
import org.thumbseal.page.PageAddress;
import org.thumbseal.page.PageNote;
import org.thumbseal.page.PageServer;
import org.thumbseal.seal.AccessToken;
import org.thumbseal.seal.KeyException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The live page: whether, where, and for whom. */
final class PageOptions {
  private static final String OFF = "off";
  private static final String TOKEN = "page-token";

  @Option(
      names = "--page",
      paramLabel = "ADDRESS",
      description =
          "where the live page is served: PORT, HOST:PORT or off; default: 127.0.0.1:8650. Other"
              + " computers and phones get in with the link that is shown at the start")
  private @Nullable String address;

  @Option(
      names = "--new-token",
      description = "make a new secret for the link to the page; the link of before leads nowhere")
  private boolean newToken;

  @Mixin private StationsOption stations = new StationsOption();

  /** Where a leak search may block, of one that is begun on the page. */
  Stations stations() {
    return stations.stations();
  }

  /** Where the page is to be served; empty: nowhere. */
  Optional<PageAddress> address() {
    String given = address;
    if (OFF.equals(given)) {
      return Optional.empty();
    }
    try {
      return Optional.of(given == null ? PageAddress.STANDARD : PageAddress.parse(given));
    } catch (IllegalArgumentException e) {
      throw Failure.usage("--page: " + e.getMessage());
    }
  }

  /**
   * Serves the page and says where.
   *
   * @return what lets go of it; a page that nobody asked for and that cannot be served is done
   *     without
   */
  Runnable serve(PageAddress where, PageServer.Served served, Place place) {
    try {
      boolean alone = PageServer.isLoopback(where);
      Optional<AccessToken> token = alone ? Optional.empty() : Optional.of(token(place.keyFile()));
      PageServer page = PageServer.start(where, served, token);
      new PageNote(page.url(), token.map(AccessToken::text)).write(place.results());
      say(place.err(), where, page, token);
      return () -> {
        PageNote.remove(place.results());
        page.close();
      };
    } catch (IOException e) {
      return without(where, e, place.err());
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  /**
   * What the page needs on the disk, and where to speak.
   *
   * @param results folder of results
   * @param keyFile the signing key; the token lies beside it
   * @param err for people
   */
  record Place(Path results, Path keyFile, PrintWriter err) {}

  private AccessToken token(Path keyFile) throws KeyException {
    Path file = keyFile.toAbsolutePath().resolveSibling(TOKEN);
    return newToken ? AccessToken.create(file) : AccessToken.loadOrCreate(file);
  }

  private static void say(
      PrintWriter err, PageAddress asked, PageServer page, Optional<AccessToken> token) {
    if (page.port() != asked.port()) {
      err.println("thumbseal: port " + asked.port() + " is taken, the page is on another");
    }
    String link = token.map(t -> page.url() + "?token=" + t.text()).orElse(page.url());
    err.println("thumbseal: page: " + link);
    if (token.isPresent()) {
      err.println("thumbseal: whoever has this link can start tests; it stays the same next time");
    }
  }

  private static Runnable without(PageAddress where, IOException e, PrintWriter err) {
    String what =
        "page: cannot be served at " + where.host() + ":" + where.port() + ": " + e.getMessage();
    if (!where.elsewhere()) {
      throw Failure.machine(what + "; choose another with --page, or --page off");
    }
    err.println("thumbseal: " + Printable.line(what) + "; going on without");
    return () -> {};
  }
}

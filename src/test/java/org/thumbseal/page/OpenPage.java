package org.thumbseal.page;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * A page that is left open: reads the events of a watch to the end, opens them again when they stop
 * before, as a browser does, and counts what it got.
 */
public final class OpenPage {
  private final URI events;
  private final Map<String, Integer> counts = new TreeMap<>();
  private final Set<String> results = new HashSet<>();
  private final Thread thread = new Thread(this::read, "open page");
  private int opened;
  private long newest;
  private long longestSilence;
  private volatile boolean closed;

  private OpenPage(URI events) {
    this.events = events;
  }

  /** Opens the page of the watch that writes into this folder; waits until it serves one. */
  public static OpenPage of(Path results, Process watch) throws IOException {
    Optional<PageNote> note = PageNote.read(results);
    while (note.isEmpty()) {
      if (!watch.isAlive()) {
        throw new IOException("watch has ended: " + watch.exitValue());
      }
      Thread.onSpinWait();
      note = PageNote.read(results);
    }
    OpenPage page = new OpenPage(URI.create(note.get().url()).resolve("/events"));
    page.thread.setDaemon(true);
    page.thread.start();
    return page;
  }

  /** Lets go of it; what it got, in words. */
  public String close() throws InterruptedException {
    closed = true;
    thread.join();
    return String.format(
        Locale.ROOT,
        "page: opened %d times, events %s, results %d, longest silence %.2f s",
        opened,
        counts,
        results.size(),
        longestSilence / 1e9);
  }

  private void read() {
    HttpClient client = HttpClient.newHttpClient();
    while (!closed) {
      HttpRequest request = HttpRequest.newBuilder(events).build();
      try (InputStream in = client.send(request, BodyHandlers.ofInputStream()).body()) {
        opened++;
        newest = System.nanoTime();
        count(new EventReader(in));
      } catch (IOException e) {
        // Opened again, and counted.
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  private void count(EventReader reader) throws IOException {
    Optional<EventReader.Event> event = reader.next();
    while (event.isPresent() && !closed) {
      long now = System.nanoTime();
      longestSilence = Math.max(longestSilence, now - newest);
      newest = now;
      counts.merge(event.get().name(), 1, Integer::sum);
      String id = event.get().data().path("result").path("id").asString("");
      if (!id.isEmpty()) {
        results.add(id);
      }
      event = reader.next();
    }
  }
}

package org.thumbseal.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.json.Json;
import org.thumbseal.page.StaticFiles.StaticFile;
import tools.jackson.databind.node.ObjectNode;

/** Every request comes here: who asks, what for, and the answer. */
final class Routes implements HttpHandler {
  private static final String EVENTS = "/events";

  /** Nothing but our own files runs or is loaded, and nobody puts the page into a frame. */
  private static final Map<String, String> EVERYWHERE =
      Map.of(
          "Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
              + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Referrer-Policy",
          "no-referrer",
          "Cache-Control",
          "no-store");

  /**
   * Who follows the link out of a message has no cookie yet in the eyes of a strict browser: the
   * page leads to itself once, and then it is its own visitor.
   */
  private static final StaticFile ONCE_MORE =
      new StaticFile(
          "text/html; charset=utf-8",
          Bytes.of(
              "<!doctype html><title>Thumbseal</title>"
                  + "<meta http-equiv=\"refresh\" content=\"0;url=/\">"));

  private final Door door;
  private final Deeds deeds;
  private final EventStreams streams;
  private final AnswerTime time;
  private final StaticFiles files = new StaticFiles();

  Routes(Door door, Deeds deeds, EventStreams streams, AnswerTime time) {
    this.door = door;
    this.deeds = deeds;
    this.streams = streams;
    this.time = time;
  }

  @Override
  public void handle(HttpExchange exchange) throws IOException {
    EVERYWHERE.forEach(exchange.getResponseHeaders()::set);
    try {
      door.check(exchange);
      route(exchange, exchange.getRequestURI().getRawPath());
    } catch (Refusal e) {
      json(exchange, e.status(), e.tree());
    } catch (RuntimeException e) {
      json(exchange, 500, new Refusal(500, "fault", "an error of this program").tree());
      throw e;
    }
  }

  private void route(HttpExchange exchange, String path) throws IOException, Refusal {
    switch (exchange.getRequestMethod()) {
      case "GET" -> get(exchange, path);
      case "POST" -> post(exchange, path);
      default -> throw wrongMethod(path);
    }
  }

  private void get(HttpExchange exchange, String path) throws IOException, Refusal {
    Optional<StaticFile> file = files.at(path);
    if (path.equals("/") && door.isLink(exchange)) {
      exchange.getResponseHeaders().set("Location", "/");
      answer(exchange, 303, Optional.empty());
    } else if (!door.isOpen(exchange)) {
      closed(exchange, path);
    } else if (path.equals(EVENTS)) {
      streams.open(exchange);
    } else if (file.isPresent()) {
      send(exchange, 200, file.get());
    } else {
      throw wrongMethod(path);
    }
  }

  private void closed(HttpExchange exchange, String path) throws IOException, Refusal {
    Headers headers = exchange.getRequestHeaders();
    if (!path.equals("/") || !"cross-site".equals(headers.getFirst("Sec-Fetch-Site"))) {
      throw Refusal.forbidden("open the link with the token that watch has shown at its start");
    }
    send(exchange, 200, ONCE_MORE);
  }

  private void post(HttpExchange exchange, String path) throws IOException, Refusal {
    if (!door.isOpen(exchange)) {
      throw Refusal.forbidden("the token is missing");
    }
    if (!deeds.knows(path)) {
      throw wrongMethod(path);
    }
    json(exchange, 200, deeds.take(path, Body.read(exchange)));
  }

  private Refusal wrongMethod(String path) {
    boolean known = files.at(path).isPresent() || deeds.knows(path) || path.equals(EVENTS);
    return known
        ? new Refusal(405, "bad-request", "not with this method")
        : new Refusal(404, "not-found", "there is nothing here");
  }

  private void json(HttpExchange exchange, int status, ObjectNode tree) throws IOException {
    String text = Json.mapper().writeValueAsString(tree);
    send(exchange, status, new StaticFile("application/json; charset=utf-8", Bytes.of(text)));
  }

  private void send(HttpExchange exchange, int status, StaticFile file) throws IOException {
    exchange.getResponseHeaders().set("Content-Type", file.type());
    boolean headOnly = exchange.getRequestMethod().equals("HEAD");
    answer(exchange, status, headOnly ? Optional.empty() : Optional.of(file.content()));
  }

  private void answer(HttpExchange exchange, int status, Optional<Bytes> content)
      throws IOException {
    time.bound(
        () -> {
          try (exchange) {
            exchange.sendResponseHeaders(status, content.map(Bytes::length).orElse(-1));
            if (content.isPresent()) {
              content.get().writeTo(exchange.getResponseBody());
            }
          }
        });
  }
}

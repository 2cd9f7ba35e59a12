package org.thumbseal.page;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/** Speaks to a running watch as its page does. */
public final class PageClient {
  private static final Duration PATIENCE = Duration.ofSeconds(10);
  private static final String DATA = "data: ";

  private final HttpClient client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();
  private final PageNote note;
  private final URI url;

  /**
   * Speaks to this watch.
   *
   * @throws IllegalArgumentException if the address in the note is none
   */
  public PageClient(PageNote note) {
    this.note = note;
    this.url = URI.create(note.url());
    if (!"http".equals(url.getScheme()) || url.getHost() == null) {
      throw new IllegalArgumentException("no address of a page: " + note.url());
    }
  }

  /**
   * What was answered.
   *
   * @param status of HTTP
   * @param body the JSON object; empty where it was none
   */
  public record Answer(int status, ObjectNode body) {
    /** Whether it was done. */
    public boolean isGood() {
      return status == 200;
    }
  }

  /**
   * The whole state of the bench; nothing is changed by asking.
   *
   * @throws IOException if nobody answers
   */
  public Answer bench() throws IOException, InterruptedException {
    HttpResponse<InputStream> response =
        client.send(request("/events").GET().build(), BodyHandlers.ofInputStream());
    try (InputStream body = response.body()) {
      return new Answer(response.statusCode(), read(body, response.statusCode() == 200));
    }
  }

  private static ObjectNode read(InputStream body, boolean events) throws IOException {
    if (!events) {
      return tree(body.readNBytes(JsonGate.LARGEST));
    }
    BufferedReader lines = new BufferedReader(new InputStreamReader(body, StandardCharsets.UTF_8));
    String line = lines.readLine();
    while (line != null && !line.startsWith(DATA)) {
      line = lines.readLine();
    }
    if (line == null) {
      throw new IOException("the page ended in the middle of its answer");
    }
    return tree(line.substring(DATA.length()).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Asks for something to be done.
   *
   * @param path {@code /do/...}
   * @throws IOException if nobody answers
   */
  public Answer post(String path, ObjectNode body) throws IOException, InterruptedException {
    HttpRequest request =
        request(path)
            .header("Content-Type", "application/json")
            .header("Origin", "http://" + url.getRawAuthority())
            .POST(BodyPublishers.ofString(Json.mapper().writeValueAsString(body)))
            .build();
    HttpResponse<byte[]> response = client.send(request, BodyHandlers.ofByteArray());
    return new Answer(response.statusCode(), tree(response.body()));
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request = HttpRequest.newBuilder(url.resolve(path)).timeout(PATIENCE);
    note.token().ifPresent(token -> request.header("Cookie", Door.COOKIE + "=" + token));
    return request;
  }

  private static ObjectNode tree(byte[] bytes) {
    try {
      return JsonGate.read(bytes);
    } catch (JsonRefusedException e) {
      return Json.object();
    }
  }
}

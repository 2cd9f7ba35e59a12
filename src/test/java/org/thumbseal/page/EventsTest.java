package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.page.EventReader.Event;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A whole simulated test as a page gets it. */
class EventsTest {
  @TempDir Path folder;

  private List<Event> follow(String port) throws Exception {
    try (ServedBench bench = ServedBench.alone(folder, port)) {
      HttpRequest request =
          HttpRequest.newBuilder(URI.create(bench.url()).resolve("/events")).build();
      var in = HttpClient.newHttpClient().send(request, BodyHandlers.ofInputStream()).body();
      EventReader reader = new EventReader(in);
      List<Event> events = new ArrayList<>(List.of(reader.next().orElseThrow()));
      bench.start();
      while (!isStored(events.get(events.size() - 1))) {
        events.add(reader.next().orElseThrow(() -> new IOException("the stream has ended")));
      }
      return events;
    }
  }

  private static boolean isStored(Event event) {
    return event.data().path("result").path("stored").asBoolean(false);
  }

  private static List<JsonNode> told(List<Event> events, String member) {
    return events.stream()
        .filter(event -> event.name().equals("port"))
        .map(event -> event.data().get(member))
        .filter(value -> value != null)
        .toList();
  }

  private static List<double[]> points(List<Event> events) {
    List<double[]> points = new ArrayList<>();
    for (Event event : events) {
      for (JsonNode point : event.data().path("points")) {
        points.add(new double[] {point.get(0).asDouble(), point.get(1).asDouble()});
      }
    }
    return points;
  }

  @Test
  void thePageSeesATestFromTheWholeStateToTheStoredResult() throws Exception {
    List<Event> events = follow("sim:sound,seed=3,speed=10");

    ObjectNode first = events.get(0).data();
    assertThat(events.get(0).name()).isEqualTo("bench");
    assertThat(first.path("ports").get(0).path("link").asString()).isEqualTo("absent");
    assertThat(first.path("ports").get(0).path("curve").isEmpty()).isTrue();
    assertThat(told(events, "phase").stream().map(JsonNode::asString))
        .containsSubsequence("idle", "open", "rise", "hold");
    assertThat(told(events, "link").stream().map(JsonNode::asString)).contains("streaming");
    List<JsonNode> results = told(events, "result").stream().filter(JsonNode::isObject).toList();
    assertThat(results.get(0).path("verdict").asString()).isEqualTo("pass");
    JsonNode last = results.get(results.size() - 1);
    assertThat(last.path("file").asString()).endsWith(".json");
  }

  /** The live number against the measurement, which finds zero and plateau in its own way. */
  @ParameterizedTest
  @ValueSource(strings = {"sound", "leak"})
  void theLiveNumberIsThatOfTheMeasurement(String kind) throws Exception {
    List<Event> events = follow("sim:" + kind + ",seed=3,speed=10");
    JsonNode result = told(events, "result").stream().filter(JsonNode::isObject).toList().get(0);
    double blockedAt = result.path("blockedAt").asDouble();
    double highest = points(events).stream().mapToDouble(p -> p[1]).max().orElseThrow();
    JsonNode open =
        told(events, "openVacuum").stream().filter(JsonNode::isNumber).findFirst().orElseThrow();

    assertThat(told(events, "zeroKnown")).extracting(JsonNode::asBoolean).endsWith(true);
    // A single reading stands above the mean of a second by noise and ripple.
    assertThat(highest).isCloseTo(value(result, "maximumVacuum"), within(0.6));
    assertThat(open.asDouble()).isCloseTo(value(result, "openVacuum"), within(0.15));
    assertThat(points(events)).anyMatch(p -> Math.abs(p[0] - blockedAt) < 0.1);
  }

  private static double value(JsonNode result, String name) {
    return result.path(name).path("value").asDouble();
  }

  @Test
  void pointsComeInOrderAndNotMoreOftenThanThePageCanDraw() throws Exception {
    List<double[]> points = points(follow("sim:sound,seed=3,speed=10"));

    assertThat(points).hasSizeGreaterThan(500);
    for (int i = 1; i < points.size(); i++) {
      assertThat(points.get(i)[0] - points.get(i - 1)[0]).isGreaterThan(0.0389);
    }
  }
}

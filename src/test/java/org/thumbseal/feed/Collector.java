package org.thumbseal.feed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.thumbseal.json.Json;
import tools.jackson.databind.JsonNode;

/**
 * A subscriber by other hands (mosquitto_sub, MQTT 5, QoS 1) with a session that the broker keeps;
 * writes down everything that arrives, in order.
 */
final class Collector implements AutoCloseable {
  private final Path file;
  private final Process process;

  private Collector(Path file, Process process) {
    this.file = file;
    this.process = process;
  }

  /** What arrived, and how. */
  record Message(String topic, String id, JsonNode properties, String payload) {}

  /** Subscribes to everything under {@code thumbseal}, and waits until that is so. */
  static Collector at(Broker broker, Path folder, String... more) throws IOException {
    Files.createDirectories(folder);
    Path file = folder.resolve("arrived");
    Path log = folder.resolve("collector.log");
    String port = Integer.toString(broker.port());
    List<String> command =
        Stream.concat(
                Stream.of(
                    "mosquitto_sub -h 127.0.0.1 -V 5 -q 1 -c -i collector -x 86400 -t thumbseal/# -F %j -p"
                        .split(" ", -1)),
                Stream.concat(Stream.of(port), Stream.of(more)))
            .toList();
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(file.toFile())
            .redirectError(log.toFile())
            .start();
    Collector collector = new Collector(file, process);
    try {
      Awaitility.await()
          .atMost(Duration.ofSeconds(20))
          .pollInterval(Duration.ofMillis(20))
          .until(() -> broker.log().contains("Sending SUBACK to collector"));
    } catch (RuntimeException e) {
      collector.close();
      throw e;
    }
    return collector;
  }

  List<Message> messages() throws IOException {
    List<Message> messages = new ArrayList<>();
    String text = Files.readString(file);
    // The last line may be on its way.
    for (String line : text.substring(0, text.lastIndexOf('\n') + 1).lines().toList()) {
      if (line.startsWith("{")) {
        JsonNode json = Json.mapper().readTree(line);
        JsonNode properties = json.path("properties");
        messages.add(
            new Message(
                json.path("topic").asString(),
                properties.path("user-properties").path("id").asString(""),
                properties,
                json.path("payload").asString()));
      }
    }
    return messages;
  }

  /** How much has been written down. */
  long bytes() throws IOException {
    return Files.size(file);
  }

  List<String> ids() throws IOException {
    return messages().stream().map(Message::id).toList();
  }

  /** Each id once, as it came first. */
  List<String> firstIds() throws IOException {
    return List.copyOf(new LinkedHashSet<>(ids()));
  }

  /** Waits until so many different ones have arrived. */
  void await(int documents) {
    Awaitility.await()
        .atMost(Duration.ofSeconds(60))
        .pollInterval(Duration.ofMillis(20))
        .until(() -> firstIds().size() >= documents);
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}

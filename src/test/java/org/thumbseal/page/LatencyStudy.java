package org.thumbseal.page;

import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tools.jackson.databind.JsonNode;

/**
 * How long after the sample that decides it the page knows: that the inlet is blocked, and the
 * verdict. A real watch of simulated sensors in real time, a real HTTP client, one machine's clock.
 *
 * <p>Arguments: number of sensors at a time (8), number of rounds (3), options of Java for watch.
 */
public final class LatencyStudy {
  private static final double ENOUGH = 0.95;

  private final List<Double> rises = new ArrayList<>();
  private final List<Double> verdicts = new ArrayList<>();
  private final List<Double> stored = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  private LatencyStudy() {}

  /** Runs it and prints the figures. */
  public static void main(String[] args) throws Exception {
    int sensors = args.length > 0 ? Integer.parseInt(args[0]) : 8;
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 3;
    LatencyStudy study = new LatencyStudy();
    for (int round = 0; round < rounds; round++) {
      study.round(sensors, round, List.of(args).subList(Math.min(2, args.length), args.length));
    }
    print("rise seen", study.rises);
    print("verdict", study.verdicts);
    print("stored", study.stored);
  }

  private void round(int sensors, int round, List<String> java) throws Exception {
    Path folder = Files.createTempDirectory("latency");
    Process watch = watch(folder, java, addresses(sensors, round));
    try {
      PageNote note = await(folder.resolve("results"), watch);
      follow(note.url());
    } finally {
      watch.destroy();
      watch.waitFor();
    }
  }

  private static List<String> addresses(int sensors, int round) {
    List<String> arguments = new ArrayList<>();
    for (int i = 0; i < sensors; i++) {
      String kind = i % 4 == 3 ? "leak" : "sound";
      arguments.addAll(
          List.of("--port", "sim:" + kind + ",seed=" + (1 + i + 100 * round) + ",speed=1"));
    }
    return arguments;
  }

  private static Process watch(Path folder, List<String> java, List<String> ports)
      throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
    command.addAll(java);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of("org.thumbseal.cli.Main", "watch"));
    command.addAll(List.of("--results", folder.resolve("results").toString()));
    command.addAll(List.of("--key", folder.resolve("key/key.pem").toString()));
    command.addAll(ports);
    return new ProcessBuilder(command)
        .redirectOutput(folder.resolve("out").toFile())
        .redirectError(folder.resolve("err").toFile())
        .start();
  }

  private static PageNote await(Path results, Process watch) throws Exception {
    while (watch.isAlive()) {
      var note = PageNote.read(results);
      if (note.isPresent()) {
        return note.get();
      }
      Thread.onSpinWait();
    }
    throw new IllegalStateException("watch has ended: " + watch.exitValue());
  }

  private void follow(String url) throws Exception {
    HttpRequest request = HttpRequest.newBuilder(URI.create(url).resolve("/events")).build();
    try (InputStream in =
        HttpClient.newHttpClient().send(request, BodyHandlers.ofInputStream()).body()) {
      EventReader reader = new EventReader(in);
      var event = reader.next();
      int running = event.orElseThrow().data().path("ports").size();
      while (event.isPresent() && running > 0) {
        double now = ChronoUnit.NANOS.between(Instant.EPOCH, Instant.now()) / 1e6;
        if (event.get().name().equals("port")) {
          take(now, event.get().data());
          running -= event.get().data().path("link").asString("").equals("ended") ? 1 : 0;
        }
        event = reader.next();
      }
    }
  }

  private void take(double now, JsonNode port) {
    if (port.path("phase").asString("").equals("rise")) {
      rises.add(now - port.path("phaseSeenAt").asDouble());
    }
    JsonNode result = port.path("result");
    if (result.isObject()) {
      String once = result.path("id").asString() + result.path("stored").asBoolean();
      if (seen.add(once)) {
        double late = now - result.path("seenAt").asDouble();
        (result.path("stored").asBoolean() ? stored : verdicts).add(late);
      }
    }
  }

  private static void print(String what, List<Double> milliseconds) {
    if (milliseconds.isEmpty()) {
      System.out.println(what + ": none");
      return;
    }
    Collections.sort(milliseconds);
    int last = milliseconds.size() - 1;
    System.out.printf(
        Locale.ROOT,
        "%-10s n %3d   median %6.1f ms   95th percentile %6.1f ms   most %6.1f ms%n",
        what,
        milliseconds.size(),
        milliseconds.get(last / 2),
        milliseconds.get((int) Math.ceil(ENOUGH * last)),
        milliseconds.get(last));
  }
}

package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Finds the ports on which a sensor says who it is, by listening on all that are on USB. Nothing is
 * written. A port that another program holds is left alone, and so are ports that are not on USB: a
 * console or a modem may be there. Opening a port can still start a board anew, so one that was no
 * sensor is not opened again for a minute, unless it was unplugged meanwhile.
 */
public final class SensorSearch {
  private static final int AT_ONCE = 16;
  private static final Duration LET_ALONE = Duration.ofMinutes(1);

  /** Linux, macOS, Windows. */
  private static final Pattern ON_USB = Pattern.compile("ttyUSB\\d+|ttyACM\\d+|cu\\.usb.*|COM\\d+");

  private final SerialPorts ports;
  private final PortProbe probe;
  private final SerialSettings settings;
  private final Map<Path, NoSensor> noSensors = new HashMap<>();

  /**
   * One port that was looked at.
   *
   * @param link to it, under the best name it has
   * @param answer what it said
   * @param connection still open, where a sensor answered; for the caller to use or to close
   */
  public record Looked(Link link, PortAnswer answer, Optional<LinkConnection> connection) {}

  private record NoSensor(PortAnswer answer, long untilNanos) {}

  private record Candidate(Path device, Link link) {}

  /**
   * Makes a search.
   *
   * @param probe listens
   * @param settings how the ports are opened
   */
  public SensorSearch(SerialPorts ports, PortProbe probe, SerialSettings settings) {
    this.ports = ports;
    this.probe = probe;
    this.settings = settings;
  }

  /**
   * Looks once at all ports, for as long as the probe is patient.
   *
   * @return what each of them said
   * @throws LinkUnavailable if the system does not tell its ports, or the serial library is not to
   *     be had
   */
  public List<Looked> look() throws LinkUnavailable {
    List<Candidate> candidates = candidates();
    long now = probe.clock().nanos();
    noSensors.keySet().retainAll(candidates.stream().map(Candidate::device).toList());
    noSensors.values().removeIf(known -> now - known.untilNanos() >= 0);
    ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE);
    try {
      List<CompletableFuture<Looked>> all =
          candidates.stream()
              .map(one -> CompletableFuture.supplyAsync(() -> look(one), threads))
              .toList();
      List<Looked> looked = all.stream().map(CompletableFuture::join).toList();
      remember(candidates, looked);
      return looked;
    } finally {
      threads.shutdown();
    }
  }

  private List<Candidate> candidates() throws LinkUnavailable {
    PortNames names = PortNames.now();
    List<Path> devices =
        Stream.concat(names.devices().stream(), listed(names).stream())
            .distinct()
            .sorted()
            .toList();
    List<Path> best = names.best(devices);
    List<Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < devices.size(); i++) {
      String name = best.get(i).toString();
      candidates.add(
          new Candidate(
              devices.get(i), new SerialLink(new LinkAddress.Serial(name, name, settings), ports)));
    }
    return candidates;
  }

  private List<Path> listed(PortNames names) throws LinkUnavailable {
    try {
      return ports.list().stream()
          .filter(port -> !port.text().contains("Bluetooth"))
          .map(port -> real(Path.of(port.path())))
          .filter(path -> ON_USB.matcher(String.valueOf(path.getFileName())).matches())
          .toList();
    } catch (LinkUnavailable e) {
      if (e.reason() == LinkUnavailable.Reason.NO_LIBRARY || names.devices().isEmpty()) {
        throw e;
      }
      return List.of();
    }
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path;
    }
  }

  private Looked look(Candidate candidate) {
    Link link = candidate.link();
    NoSensor known = noSensors.get(candidate.device());
    if (known != null) {
      return new Looked(link, known.answer(), Optional.empty());
    }
    LinkConnection connection = null;
    PortAnswer answer;
    try {
      connection = link.open();
      answer = probe.listen(connection, link.settle());
    } catch (LinkUnavailable e) {
      answer = new PortAnswer.Closed(e);
    }
    return new Looked(link, answer, kept(connection, answer));
  }

  private static Optional<LinkConnection> kept(
      @Nullable LinkConnection connection, PortAnswer answer) {
    if (connection != null && !(answer instanceof PortAnswer.Sensor)) {
      connection.close();
      return Optional.empty();
    }
    return Optional.ofNullable(connection);
  }

  private void remember(List<Candidate> candidates, List<Looked> looked) {
    long until = probe.clock().nanos() + LET_ALONE.toNanos();
    for (int i = 0; i < looked.size(); i++) {
      PortAnswer answer = looked.get(i).answer();
      if (answer instanceof PortAnswer.Stranger || answer instanceof PortAnswer.Silence) {
        noSensors.putIfAbsent(candidates.get(i).device(), new NoSensor(answer, until));
      }
    }
  }
}

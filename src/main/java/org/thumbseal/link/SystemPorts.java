package org.thumbseal.link;

import com.fazecast.jSerialComm.SerialPort;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * Enumerates on a thread of its own: with paired Bluetooth ports Windows may take minutes. An
 * enumeration that is late is not started again but waited for by the next one who asks.
 */
final class SystemPorts implements SerialPorts {
  private static final Duration LONGEST_WAIT = Duration.ofSeconds(2);

  private final Supplier<List<PortDescription>> system;
  private final Duration longestWait;
  private @Nullable CompletableFuture<List<PortDescription>> running;

  SystemPorts(Supplier<List<PortDescription>> system, Duration longestWait) {
    this.system = system;
    this.longestWait = longestWait;
  }

  static SystemPorts ofLibrary() {
    return new SystemPorts(SystemPorts::enumerate, LONGEST_WAIT);
  }

  @Override
  public List<PortDescription> list() throws LinkUnavailable {
    NativeLibrary.load();
    CompletableFuture<List<PortDescription>> task = task();
    try {
      List<PortDescription> ports = task.get(longestWait.toMillis(), TimeUnit.MILLISECONDS);
      forget();
      return ports;
    } catch (ExecutionException e) {
      forget();
      throw new LinkUnavailable(Reason.FAILED, "the system does not list its ports; name one");
    } catch (TimeoutException e) {
      throw slow();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw slow();
    }
  }

  private static LinkUnavailable slow() {
    return new LinkUnavailable(
        Reason.FAILED, "the system is slow to list its ports; name one, or try again");
  }

  private synchronized CompletableFuture<List<PortDescription>> task() {
    CompletableFuture<List<PortDescription>> task = running;
    if (task == null) {
      task = new CompletableFuture<>();
      running = task;
      start(task);
    }
    return task;
  }

  private void start(CompletableFuture<List<PortDescription>> task) {
    Thread thread = new Thread(() -> run(task), "port-list");
    thread.setDaemon(true);
    thread.start();
  }

  private void run(CompletableFuture<List<PortDescription>> task) {
    try {
      task.complete(system.get());
    } catch (RuntimeException | LinkageError e) {
      task.completeExceptionally(e);
    }
  }

  private synchronized void forget() {
    running = null;
  }

  private static List<PortDescription> enumerate() {
    PortNames names = PortNames.now();
    return Stream.of(SerialPort.getCommPorts())
        .map(port -> describe(port, names))
        .sorted(Comparator.comparing(PortDescription::path))
        .toList();
  }

  private static PortDescription describe(SerialPort port, PortNames names) {
    String path = SerialPath.windows() ? port.getSystemPortName() : port.getSystemPortPath();
    return describe(path, port.getDescriptivePortName(), names);
  }

  /** With the name that it keeps when it is plugged in again, if it has one. */
  static PortDescription describe(String path, String text, PortNames names) {
    Path best = names.best(List.of(Path.of(path))).get(0);
    boolean better = !best.equals(Path.of(path));
    return new PortDescription(path, better ? text + ", lasting name " + best : text);
  }
}

package org.thumbseal.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * Enumerates on a thread of its own: with paired Bluetooth ports Windows may take minutes. An
 * enumeration that is late is not started again but waited for by the next one who asks.
 */
final class SystemPorts implements SerialPorts {
  private static final long LONGEST_WAIT_MILLIS = 2_000;

  private @Nullable CompletableFuture<List<PortDescription>> running;

  @Override
  public List<PortDescription> list() throws LinkUnavailable {
    NativeLibrary.load();
    CompletableFuture<List<PortDescription>> task = task();
    try {
      List<PortDescription> ports = task.get(LONGEST_WAIT_MILLIS, TimeUnit.MILLISECONDS);
      forget();
      return ports;
    } catch (ExecutionException e) {
      forget();
      throw new LinkUnavailable(Reason.FAILED, "the system does not list its ports; name one");
    } catch (TimeoutException e) {
      throw new LinkUnavailable(Reason.FAILED, SLOW);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new LinkUnavailable(Reason.FAILED, SLOW);
    }
  }

  private static final String SLOW = "the system is slow to list its ports; name one, or try again";

  private synchronized CompletableFuture<List<PortDescription>> task() {
    CompletableFuture<List<PortDescription>> task = running;
    if (task == null) {
      task = new CompletableFuture<>();
      running = task;
      start(task);
    }
    return task;
  }

  private static void start(CompletableFuture<List<PortDescription>> task) {
    Thread thread = new Thread(() -> enumerate(task), "port-list");
    thread.setDaemon(true);
    thread.start();
  }

  private static void enumerate(CompletableFuture<List<PortDescription>> task) {
    try {
      SerialPort[] ports = SerialPort.getCommPorts();
      task.complete(Stream.of(ports).map(SystemPorts::describe).sorted(BY_PATH).toList());
    } catch (RuntimeException | LinkageError e) {
      task.completeExceptionally(e);
    }
  }

  private static final Comparator<PortDescription> BY_PATH =
      Comparator.comparing(PortDescription::path);

  private static PortDescription describe(SerialPort port) {
    String path = SerialPath.windows() ? port.getSystemPortName() : port.getSystemPortPath();
    return new PortDescription(path, port.getDescriptivePortName());
  }

  private synchronized void forget() {
    running = null;
  }
}

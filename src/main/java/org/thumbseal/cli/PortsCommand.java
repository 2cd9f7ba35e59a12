package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkAddressException;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.Links;
import org.thumbseal.link.PortAnswer;
import org.thumbseal.link.PortDescription;
import org.thumbseal.link.PortProbe;
import org.thumbseal.link.SerialPorts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code ports}: which serial ports there are, and on which of them a sensor speaks. */
@Command(
    name = "ports",
    mixinStandardHelpOptions = true,
    description = "List serial ports; with --probe, listen on each for a sensor.")
final class PortsCommand implements Callable<Integer> {
  private static final int AT_ONCE = 8;

  private final SerialPorts ports;
  private final Links links;
  private final PortProbe probe;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--probe",
      description = "Listen on each port for up to 2.5 s; opening a port can reset a board.")
  private boolean probing;

  @Parameters(
      paramLabel = "PORT",
      description = "Listen on these instead of all; written as for 'watch --port'.")
  private List<String> named = new ArrayList<>();

  PortsCommand(Streams streams) {
    this(
        SerialPorts.system(),
        new Links(new SimulatedPumps(), streams.in(), HostClock.system()),
        new PortProbe(HostClock.system(), PortProbe.ONE_IDENTITY));
  }

  PortsCommand(SerialPorts ports, Links links, PortProbe probe) {
    this.ports = ports;
    this.links = links;
    this.probe = probe;
  }

  @Override
  public Integer call() {
    try {
      List<PortDescription> found = named.isEmpty() ? ports.list() : describeNamed();
      if (found.isEmpty()) {
        return complain("no serial port found; plug the sensor in and look again");
      }
      return probing || !named.isEmpty() ? probe(found) : list(found);
    } catch (LinkUnavailable e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    } catch (LinkAddressException e) {
      throw Failure.usage(String.valueOf(e.getMessage()));
    }
  }

  private List<PortDescription> describeNamed() {
    return named.stream().map(name -> new PortDescription(name, "")).toList();
  }

  private int list(List<PortDescription> found) {
    Columns columns = Columns.of(found);
    found.forEach(port -> print(columns.line(port.path(), port.text())));
    return ExitCode.GOOD;
  }

  private int probe(List<PortDescription> found) throws LinkAddressException {
    List<LinkAddress> addresses = new ArrayList<>();
    for (PortDescription port : found) {
      addresses.add(LinkAddress.parse(port.path()));
    }
    Columns columns = Columns.of(found);
    ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE);
    try {
      List<CompletableFuture<PortAnswer>> answers =
          addresses.stream().map(address -> listen(address, threads)).toList();
      return report(addresses, answers, columns);
    } finally {
      threads.shutdown();
    }
  }

  private CompletableFuture<PortAnswer> listen(LinkAddress address, ExecutorService threads) {
    return CompletableFuture.supplyAsync(() -> probe.listen(links.to(address)), threads);
  }

  private int report(
      List<LinkAddress> addresses, List<CompletableFuture<PortAnswer>> answers, Columns columns) {
    int sensors = 0;
    for (int i = 0; i < addresses.size(); i++) {
      PortAnswer answer = answers.get(i).join();
      print(columns.line(addresses.get(i).text(), AnswerText.of(answer)));
      sensors += answer instanceof PortAnswer.Sensor ? 1 : 0;
    }
    return sensors > 0
        ? ExitCode.GOOD
        : complain("no sensor answered; is one plugged in and powered?");
  }

  private void print(String line) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(Printable.line(line));
    out.flush();
  }

  private int complain(String message) {
    PrintWriter err = spec.commandLine().getErr();
    err.println("thumbseal: " + Printable.line(message));
    err.flush();
    return ExitCode.NOT_PASSED;
  }
}

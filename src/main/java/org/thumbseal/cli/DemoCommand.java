package org.thumbseal.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkAddressException;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.CurvePoints;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.report.ResultText;
import org.thumbseal.report.TextCurve;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What a newcomer runs first: two simulated pumps through the very path of the daemon. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = "Test two simulated pumps, one sound and one leaking; takes some seconds.")
final class DemoCommand implements Callable<Integer> {
  private static final String PUMPS_SPEED = "10";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "where to write; default: thumbseal-demo")
  private Path directory = Path.of("thumbseal-demo");

  private final Streams streams;
  private @Nullable Path lastResult;

  DemoCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    makeDirectory();
    ArchiveOptions storing = new ArchiveOptions(key(), new PassphraseOption());
    // That the key is new goes without saying: it is the demo's own.
    Archive archive = storing.open(results(), new PrintWriter(Writer.nullWriter()));
    try {
      return run(archive);
    } finally {
      storing.close(archive);
    }
  }

  private void makeDirectory() {
    try {
      Files.createDirectories(directory);
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e) + "; name another place with -o DIR");
    }
  }

  private int run(Archive archive) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(
        "A simulated sensor at two simulated pumps, " + PUMPS_SPEED + " times as fast as life.");
    out.println();
    int sound = test(archive, "sound", "WARD-3-PUMP-1");
    int code = Math.max(sound, test(archive, "leak", "WARD-3-PUMP-2"));
    if (code == ExitCode.GOOD) {
      explain(out);
    }
    return code;
  }

  private int test(Archive archive, String kind, String asset) {
    try {
      GradingSettings settings = GradingSettings.DEFAULT.withPump(p -> p.withAsset(asset));
      Listener listener = new Listener();
      var parts = new Bench.Parts(archive, listener, settings);
      LinkAddress address = LinkAddress.parse("sim:" + kind + ",seed=3,speed=" + PUMPS_SPEED);
      int code = new Bench(List.of(Bench.links(streams.in()).to(address)), parts, false).run();
      return listener.results.get() == 0 ? Math.max(code, ExitCode.MACHINE) : code;
    } catch (LinkAddressException e) {
      throw new IllegalStateException(e);
    }
  }

  private Path results() {
    return directory.resolve("results");
  }

  private Path key() {
    return directory.resolve("key").resolve("signing-key.pem");
  }

  private void explain(PrintWriter out) {
    out.println("Results and captures:  " + results());
    out.println("Sealed with a key made for this demo alone, not yours: " + key());
    out.println("The seals verify with: " + Program.call("verify", verifyArguments()));
    Path result = lastResult;
    if (result != null) {
      String capture = result.toString().replaceFirst("\\.json$", ".log");
      out.println("Grade one again with:  " + Program.call("replay", capture));
    }
  }

  private String verifyArguments() {
    return results() + " --trust " + directory.resolve("key/signing-key.jwk");
  }

  /** Prints as watch does, and draws the curve of each result. */
  private final class Listener extends BenchPrinter {
    private final AtomicInteger results = new AtomicInteger();
    private boolean released;

    Listener() {
      super(spec.commandLine().getOut(), spec.commandLine().getErr());
    }

    @Override
    public void phase(String port, PhaseEvent.Entered phase) {
      if (!released) {
        super.phase(port, phase);
      }
    }

    @Override
    public void result(String port, ResultDocument result, Path file) {
      results.incrementAndGet();
      released = true;
      lastResult = file;
      PrintWriter out = spec.commandLine().getOut();
      out.println();
      result
          .measurement()
          .map(test -> TextCurve.lines(result, CurvePoints.of(capture(file), test)))
          .ifPresent(lines -> lines.forEach(out::println));
      out.println();
      ResultText.lines(result).forEach(out::println);
      out.println();
      out.flush();
    }

    private Capture capture(Path document) {
      String name = document.getFileName().toString().replaceFirst("\\.json$", ".log");
      try {
        return CaptureReader.read(Files.readAllBytes(document.resolveSibling(name)));
      } catch (IOException | CaptureFormatException e) {
        throw Failure.machine(name + ": cannot be read back: " + e.getMessage());
      }
    }

    @Override
    public void notice(String text) {}
  }
}

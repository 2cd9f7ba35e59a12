package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.daemon.OpenedLink;
import org.thumbseal.guided.GuidedSearch;
import org.thumbseal.guided.SealedSearch;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkAddressException;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.seek.Conclusion;
import org.thumbseal.seek.SearchWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Finds the leak along the suction path, station by station. */
@Command(
    name = "seek-leak",
    mixinStandardHelpOptions = true,
    description = {
      "Find which section of the suction path leaks, by occlusion tests at successive stations.",
      "Says where to block, waits for the test, says what it tells, and stops when one section is"
          + " worse than the rest or none is. Never a pump in use on a patient; gloves, jar empty"
          + " and disinfected; unplug before hoses are moved, and never open the pump."
    })
final class SeekLeakCommand implements Callable<Integer> {
  /** Options that say what is otherwise when a search is gone on with, or that it says itself. */
  private static final Set<String> CHANGING = Set.of("--from", "--stations", "--port", "--json");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(index = "0", paramLabel = "ASSET", description = "the pump")
  private String asset = "";

  @Option(
      names = "--port",
      paramLabel = "P",
      description = "the sensor, written as for 'watch'; auto takes the only one on USB")
  private @Nullable String port;

  @Option(
      names = "--from",
      paramLabel = "RESULT",
      description =
          "a sealed result to begin with, for the station that is asked for next; N=RESULT for"
              + " station N, counted from the patient end; a folder: its results, oldest first;"
              + " repeatable")
  private List<String> from = new ArrayList<>();

  @Option(names = "--by", paramLabel = "NAME", description = "who searches")
  private @Nullable String by;

  @Option(names = "--json", description = "print the sealed document and nothing else")
  private boolean json;

  @Mixin private SearchOptions searching = new SearchOptions();
  @Mixin private LineOptions lines = new LineOptions();
  @Mixin private ArchiveOptions storing = new ArchiveOptions();
  @Mixin private CalibrationOptions calibrations = new CalibrationOptions();

  private final Streams streams;
  private final HostClock clock;

  SeekLeakCommand(Streams streams) {
    this(streams, HostClock.system());
  }

  SeekLeakCommand(Streams streams, HostClock clock) {
    this.streams = streams;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    if (from.isEmpty() && port == null) {
      throw Failure.usage("say where the sensor is: --port P; or name sealed results: --from FILE");
    }
    searching.look(pump(), spec.commandLine().getErr());
    SealedSearch sealed = sealed();
    GuidedSearch search = new GuidedSearch(searching.stations(), searching.litres(), this::say);
    EarlierTests earlier =
        new EarlierTests(pump(), calibrations.trusted(storing.keyFile()), this::remark);
    Optional<LinkAddress> address = Optional.ofNullable(port).map(this::address);
    from.forEach(each -> earlier.into(search, each));
    return search.conclusion().isEmpty() && address.isPresent()
        ? live(address.get(), search, sealed)
        : settle(search, sealed);
  }

  private String pump() {
    return SaidText.required("ASSET", asset, SaidText.NAME);
  }

  private SealedSearch sealed() {
    return new SealedSearch(
        new SealedSearch.Said(
            pump(), SaidText.optional("--by", by, SaidText.NAME), searching.litres()),
        clock);
  }

  /** From what there is already. */
  private int settle(GuidedSearch search, SealedSearch sealed) {
    Optional<Conclusion> found = search.conclusion();
    if (found.isEmpty()) {
      search.advise();
      unfinished(search);
      return ExitCode.NOT_PASSED;
    }
    Archive archive = storing.open(results(), spec.commandLine().getErr());
    try {
      return answer(sealed, search, archive);
    } finally {
      storing.close(archive);
    }
  }

  /** Beside the results that were named, unless another directory is. */
  private Path results() {
    return storing
        .results()
        .or(() -> from.stream().findFirst().flatMap(SeekLeakCommand::directoryOf))
        .orElseThrow(() -> Failure.usage("say where the results are: --results DIR"));
  }

  private static Optional<Path> directoryOf(String from) {
    Path path = Path.of(from.replaceFirst("^[1-9][0-9]?=", ""));
    return Archive.directoryOf(Files.isDirectory(path) ? path.resolve("x") : path);
  }

  private int live(LinkAddress address, GuidedSearch search, SealedSearch sealed) {
    Link link = AutoPort.one(address, Bench.links(streams.in()), this::remark);
    try (OpenedLink opened = OpenedLink.of(link)) {
      return watch(opened, search, sealed);
    } catch (LinkUnavailable e) {
      String message = link.name() + ": " + e.getMessage();
      throw e.isMistake() ? Failure.usage(message) : Failure.machine(message);
    }
  }

  private int watch(Link link, GuidedSearch search, SealedSearch sealed) {
    PrintWriter err = spec.commandLine().getErr();
    Path results = storing.results().orElse(Path.of("results"));
    Archive archive = storing.openForDaemon(results, err);
    try {
      LiveSearch listener = new LiveSearch(search, progress(), err);
      Bench bench =
          new Bench(List.of(link), new Bench.Parts(archive, listener, settings(results)), false);
      listener.whenOver(bench::requestStop);
      bench.desks().values().forEach(desk -> desk.seek(Optional.of(pump())));
      SearchWords.CAUTIONS.forEach(this::say);
      search.advise();
      int code = Orderly.run(bench, ended -> interrupted(ended, search, archive));
      if (search.conclusion().isEmpty()) {
        unfinished(search);
        return Math.max(code, ExitCode.NOT_PASSED);
      }
      return Math.max(code, answer(sealed, search, archive));
    } finally {
      storing.close(archive);
    }
  }

  private GradingSettings settings(Path results) {
    PrintWriter err = spec.commandLine().getErr();
    return lines
        .into(searching.settings())
        .withSensor(
            s ->
                s.withCalibrations(
                    calibrations.load(Optional.of(results), storing.keyFile(), err)));
  }

  private int interrupted(int code, GuidedSearch search, Archive archive) {
    unfinished(search);
    storing.close(archive);
    return Math.max(code, ExitCode.NOT_PASSED);
  }

  /** Nothing is lost: each test is sealed in a result of its own. */
  private void unfinished(GuidedSearch search) {
    String how =
        search.resumed().isEmpty()
            ? "no test counts yet"
            : "go on with: thumbseal seek-leak "
                + Printable.word(pump())
                + search.resumed()
                + said()
                + " --port P";
    // Not cut, however many tests there are: it is to be copied.
    PrintWriter err = spec.commandLine().getErr();
    err.println("thumbseal: " + Printable.whole("the search is not finished; " + how));
  }

  /** What else was said, so that whoever goes on need not remember it. */
  private String said() {
    return spec.commandLine().getParseResult().matchedOptions().stream()
        .filter(option -> !CHANGING.contains(option.longestName()))
        .flatMap(SeekLeakCommand::again)
        .collect(Collectors.joining());
  }

  private static Stream<String> again(OptionSpec option) {
    String name = " " + option.longestName();
    return option.arity().max() == 0
        ? Stream.of(name)
        : option.originalStringValues().stream().map(value -> name + " " + Printable.word(value));
  }

  private int answer(SealedSearch sealed, GuidedSearch search, Archive archive) {
    try {
      SealedSearch.Answer answer = sealed.seal(search.state(), archive::store);
      say(pump() + ": " + answer.sentence());
      say("  " + answer.advice());
      say("  " + answer.stored().document());
      print(Canonical.text(answer.stored().sealed()));
      boolean tight = answer.found().verdict() == Conclusion.Verdict.TIGHT;
      return tight ? ExitCode.GOOD : ExitCode.NOT_PASSED;
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  private LinkAddress address(String text) {
    try {
      LinkAddress parsed = LinkAddress.parse(text);
      lines.require(List.of(parsed));
      return parsed;
    } catch (LinkAddressException e) {
      throw Failure.usage("--port: " + e.getMessage());
    }
  }

  /** What the search says on its way; beside the answer where that is a document. */
  private PrintWriter progress() {
    return json ? spec.commandLine().getErr() : spec.commandLine().getOut();
  }

  private void say(String line) {
    progress().println(Printable.line(line));
    progress().flush();
  }

  private void print(String document) {
    if (json) {
      spec.commandLine().getOut().println(document);
    }
  }

  private void remark(String line) {
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(line));
  }
}

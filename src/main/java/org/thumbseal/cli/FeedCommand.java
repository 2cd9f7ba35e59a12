package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.feed.FeedBegin;
import org.thumbseal.feed.FeedException;
import org.thumbseal.feed.FeedFollower;
import org.thumbseal.feed.FeedPlace;
import org.thumbseal.feed.FeedState;
import org.thumbseal.feed.FeedSurroundings;
import org.thumbseal.feed.FeedTarget;
import org.thumbseal.feed.Feeder;
import org.thumbseal.feed.RetryPlan;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Sends sealed documents on. */
@Command(
    name = "feed",
    mixinStandardHelpOptions = true,
    description = {
      "Send sealed documents on to an MQTT 5 broker or an HTTPS address, in order.",
      "Goes on until it is told to stop (Ctrl-C or SIGTERM) and sends what is stored meanwhile."
          + " What is not acknowledged waits, for weeks if need be; a document may arrive twice,"
          + " always with the same id."
    })
final class FeedCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      index = "0",
      paramLabel = "URL",
      description = "mqtts://HOST[:8883], mqtt://HOST[:1883] (not encrypted) or https://HOST/PATH")
  private String address = "";

  @Option(
      names = "--results",
      paramLabel = "DIR",
      description = "the directory with the sealed results. Default: results")
  private Path results = Path.of("results");

  @Option(
      names = "--topic",
      paramLabel = "PREFIX",
      description = "what every topic begins with: PREFIX/KIND/ASSET. Default: thumbseal")
  private @Nullable String topic;

  @Option(
      names = "--credentials",
      paramLabel = "FILE",
      description =
          "holds two lines, user=NAME and password=..., or one, token=...; only you may read it")
  private @Nullable Path credentials;

  @Option(
      names = "--ca",
      paramLabel = "FILE",
      description = "certificates (PEM) of the authorities to accept there. Default: those of Java")
  private @Nullable Path authorities;

  @Option(
      names = "--outbox",
      paramLabel = "DIR",
      description = "where is kept what was acknowledged. Default: .feed in the results directory")
  private @Nullable Path outbox;

  @Option(names = "--once", description = "send what there is, and end; with 3 if some waits")
  private boolean once;

  @Option(names = "--status", description = "say how many wait, since when and why; send nothing")
  private boolean status;

  @Option(names = "--again", description = "begin with what was refused before")
  private boolean again;

  @Option(names = "--all", description = "send everything again")
  private boolean all;

  @Option(
      names = "--without-subscriber",
      description =
          "a document is sent also where the broker says that nobody has subscribed; else it waits")
  private boolean withoutSubscriber;

  @Override
  public Integer call() {
    if (!Files.isDirectory(results)) {
      throw Failure.usage(results + ": there is no such directory; name one with --results DIR");
    }
    if (again && all) {
      throw Failure.usage("--all sends what was refused too; leave --again out");
    }
    FeedTarget target =
        FeedTargets.of(
            new FeedTargets.Typed(
                address,
                Optional.ofNullable(topic),
                Optional.ofNullable(credentials),
                Optional.ofNullable(authorities),
                !withoutSubscriber));
    try {
      return status ? tell(Feeder.state(place(), target)) : feed(target);
    } catch (FeedException e) {
      throw FeedTargets.failure(e);
    }
  }

  private FeedPlace place() {
    return FeedTargets.place(results, Optional.ofNullable(outbox));
  }

  private int feed(FeedTarget target) throws FeedException {
    PrintWriter err = spec.commandLine().getErr();
    FeedTargets.warn(target, err);
    FeedBegin begin = all ? FeedBegin.ALL_AGAIN : again ? FeedBegin.REFUSED_AGAIN : FeedBegin.GO_ON;
    FeedSurroundings around =
        new FeedSurroundings(HostClock.system(), line -> say(err, line), Duration.ZERO);
    Feeder feeder = Feeder.open(place(), target, begin, around);
    return once ? once(feeder) : follow(feeder, around);
  }

  private static void say(PrintWriter err, String line) {
    err.println("thumbseal: " + Printable.line(line));
  }

  private int once(Feeder feeder) throws FeedException {
    try {
      Feeder.Round round = feeder.stubbornRound(RetryPlan.STANDARD);
      FeedState state = feeder.state();
      tell(state);
      if (!round.trouble().isEmpty()) {
        throw Failure.machine(round.trouble());
      }
      return state.refused() == 0 ? ExitCode.GOOD : ExitCode.NOT_PASSED;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return ExitCode.MACHINE;
    } finally {
      feeder.close();
    }
  }

  private int follow(Feeder feeder, FeedSurroundings around) {
    var rhythm = FeedFollower.Rhythm.standard(new SplittableRandom()::nextDouble);
    FeedFollower follower = FeedFollower.start(() -> feeder, rhythm, around);
    Thread hook = new Thread(() -> stop(follower), "stop");
    Runtime.getRuntime().addShutdownHook(hook);
    try {
      follower.awaitEnd();
    } catch (InterruptedException e) {
      follower.close();
      Thread.currentThread().interrupt();
    }
    return ExitCode.GOOD;
  }

  /** A process that ends by a signal has the signal as its exit code unless it is halted. */
  private static void stop(FeedFollower follower) {
    follower.close();
    Runtime.getRuntime().halt(ExitCode.GOOD);
  }

  private int tell(FeedState state) {
    PrintWriter out = spec.commandLine().getOut();
    String line = state.line();
    out.println(line.isEmpty() ? "feed: all sent" : Printable.line(line));
    boolean settled = state.waiting() == 0 && state.refused() == 0;
    return settled ? ExitCode.GOOD : ExitCode.NOT_PASSED;
  }
}

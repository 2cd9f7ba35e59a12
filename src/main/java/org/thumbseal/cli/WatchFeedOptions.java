package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.feed.FeedPlace;
import org.thumbseal.feed.FeedTarget;
import picocli.CommandLine.Option;

/** Where a watch sends its results. */
final class WatchFeedOptions {
  @Option(
      names = "--feed",
      paramLabel = "URL",
      description =
          "send each sealed document on, to mqtts://HOST (MQTT 5) or https://HOST/PATH; what cannot"
              + " be sent now waits, and holds up no test. See: thumbseal feed --help")
  private @Nullable String address;

  @Option(
      names = "--feed-topic",
      paramLabel = "PREFIX",
      description = "what every topic begins with. Default: thumbseal")
  private @Nullable String topic;

  @Option(
      names = "--feed-credentials",
      paramLabel = "FILE",
      description = "holds user= and password= for it; only you may read it")
  private @Nullable Path credentials;

  @Option(
      names = "--feed-ca",
      paramLabel = "FILE",
      description = "certificates (PEM) of the authorities to accept there. Default: those of Java")
  private @Nullable Path authorities;

  @Option(
      names = "--feed-outbox",
      paramLabel = "DIR",
      description = "where is kept what was acknowledged. Default: .feed in the results directory")
  private @Nullable Path outbox;

  @Option(
      names = "--feed-without-subscriber",
      description =
          "a document is sent also where the broker says that nobody has subscribed; else it waits")
  private boolean withoutSubscriber;

  /** Where documents of this directory come from, and where is kept how far they are sent. */
  FeedPlace place(Path results) {
    return FeedTargets.place(results, Optional.ofNullable(outbox));
  }

  /** The target, if there is one. */
  Optional<FeedTarget> target() {
    String given = address;
    if (given == null) {
      if (saysHow()) {
        throw Failure.usage("--feed-... says how to send; say where to with --feed URL");
      }
      return Optional.empty();
    }
    return Optional.of(
        FeedTargets.of(
            new FeedTargets.Typed(
                given,
                Optional.ofNullable(topic),
                Optional.ofNullable(credentials),
                Optional.ofNullable(authorities),
                !withoutSubscriber)));
  }

  private boolean saysHow() {
    return topic != null
        || credentials != null
        || authorities != null
        || outbox != null
        || withoutSubscriber;
  }
}

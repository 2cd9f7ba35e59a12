package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.feed.FeedAddress;
import org.thumbseal.feed.FeedException;
import org.thumbseal.feed.FeedPlace;
import org.thumbseal.feed.FeedTarget;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.Login;
import org.thumbseal.seal.TlsTrust;

/** Makes of what was typed where documents are sent. */
final class FeedTargets {
  private FeedTargets() {}

  /**
   * What was typed.
   *
   * @param address of a broker or a receiver
   * @param topic what topics begin with
   * @param credentials file of the login
   * @param authorities file of certificates
   * @param needsSubscriber whether what nobody has subscribed to waits
   */
  record Typed(
      String address,
      Optional<String> topic,
      Optional<Path> credentials,
      Optional<Path> authorities,
      boolean needsSubscriber) {}

  /** Checks it; a mistake ends the command. */
  static FeedTarget of(Typed typed) {
    try {
      FeedAddress address = FeedAddress.parse(typed.address());
      if (typed.topic().isPresent() && !address.isBroker()) {
        throw Failure.usage("a topic is for a broker; an https address has none");
      }
      String topic = FeedTarget.topic(typed.topic().orElse(FeedTarget.STANDARD_TOPIC));
      Optional<Login> login = Optional.empty();
      if (typed.credentials().isPresent()) {
        login = Optional.of(Login.read(typed.credentials().get()));
      }
      TlsTrust tls = TlsTrust.of(typed.authorities());
      return new FeedTarget(address, topic, login, tls, typed.needsSubscriber());
    } catch (FeedException e) {
      throw failure(e);
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  /** With the outbox that was named; else the one in the results directory. */
  static FeedPlace place(Path results, Optional<Path> outbox) {
    return outbox.map(folder -> new FeedPlace(results, folder)).orElse(FeedPlace.in(results));
  }

  /** Says what a person should know who sends there. */
  static void warn(FeedTarget target, PrintWriter err) {
    FeedAddress address = target.address();
    if (!address.isEncrypted() && !address.isLoopback()) {
      err.println(
          "thumbseal: mqtt:// is not encrypted: results and password can be read on the way;"
              + " use mqtts://");
    }
  }

  static Failure failure(FeedException e) {
    String message = String.valueOf(e.getMessage());
    return e.isMistake() ? Failure.usage(message) : Failure.machine(message);
  }
}

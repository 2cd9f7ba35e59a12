package org.thumbseal.feed;

import java.time.Duration;
import java.util.function.Consumer;
import org.thumbseal.link.HostClock;

/**
 * What a feed needs of the machine.
 *
 * @param clock times its steps, and says since when something waits
 * @param notices is told what a person should know, in lines
 * @param breath how long it rests after each document, for others who need the processor
 */
public record FeedSurroundings(HostClock clock, Consumer<String> notices, Duration breath) {
  void breathe() {
    if (!breath.isZero()) {
      clock.pause(breath);
    }
  }

  void tell(String text) {
    notices.accept("feed: " + text);
  }
}

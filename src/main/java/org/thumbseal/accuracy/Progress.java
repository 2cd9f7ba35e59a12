package org.thumbseal.accuracy;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

/** Says now and then how far a long run has come; may be told by several threads. */
final class Progress {
  private static final int LINES = 20;

  private final Consumer<String> say;
  private final String what;
  private final int all;
  private final AtomicInteger done = new AtomicInteger();

  Progress(Consumer<String> say, String what, int all) {
    this.say = say;
    this.what = what;
    this.all = all;
  }

  void done() {
    int now = done.incrementAndGet();
    if (now == all || now % Math.max(1, all / LINES) == 0) {
      say.accept(what + ": " + now + " of " + all);
    }
  }
}

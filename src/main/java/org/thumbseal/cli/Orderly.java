package org.thumbseal.cli;

import java.util.concurrent.CountDownLatch;

/** Lets a bench finish the write in hand when the process is told to stop, and exit with 0. */
final class Orderly {
  private Orderly() {}

  /**
   * Runs a bench to its end.
   *
   * @param release what has to be let go before the process ends
   * @return the exit code, where the bench ended by itself
   */
  static int run(Bench bench, Runnable release) {
    CountDownLatch ended = new CountDownLatch(1);
    Thread hook = new Thread(() -> stop(bench, ended, release), "stop");
    Runtime.getRuntime().addShutdownHook(hook);
    int code = bench.run();
    ended.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
      return code;
    } catch (IllegalStateException e) {
      // The process is going down: the hook ends it, with its own exit code.
      awaitForever();
      return code;
    }
  }

  /** A process that ends by a signal has the signal as its exit code unless it is halted. */
  private static void stop(Bench bench, CountDownLatch ended, Runnable release) {
    bench.requestStop();
    try {
      ended.await();
      release.run();
      Runtime.getRuntime().halt(ExitCode.GOOD);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void awaitForever() {
    try {
      new CountDownLatch(1).await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

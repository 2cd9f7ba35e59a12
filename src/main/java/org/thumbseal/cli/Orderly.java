package org.thumbseal.cli;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.function.IntUnaryOperator;

/**
 * Lets a bench finish the write in hand when the process is told to stop, and exit with the bench's
 * own code: 0, unless something could not be done.
 */
final class Orderly {
  private Orderly() {}

  /**
   * Runs a bench to its end.
   *
   * @param release lets go what has to be before the process ends by a signal, and turns the
   *     bench's exit code into that of the process
   * @return the exit code, where the bench ended by itself
   */
  static int run(Bench bench, IntUnaryOperator release) {
    CompletableFuture<Integer> ended = new CompletableFuture<>();
    Thread hook = new Thread(() -> stop(bench, ended, release), "stop");
    Runtime.getRuntime().addShutdownHook(hook);
    int code = ExitCode.MACHINE;
    try {
      code = bench.run();
    } finally {
      // Whatever went wrong, the hook must not wait for an end that has come.
      ended.complete(code);
    }
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
  private static void stop(
      Bench bench, CompletableFuture<Integer> ended, IntUnaryOperator release) {
    bench.requestStop();
    int code = ended.join();
    try {
      code = release.applyAsInt(code);
    } finally {
      Runtime.getRuntime().halt(code);
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

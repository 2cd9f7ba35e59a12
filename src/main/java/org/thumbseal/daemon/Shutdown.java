package org.thumbseal.daemon;

/** Whether this process is on its way out. */
final class Shutdown {
  private Shutdown() {}

  /**
   * The serial library closes its ports at the same time as our own shutdown runs, so a port lost
   * now was not unplugged. Nothing else in Java tells but that no hook is taken any more.
   */
  static boolean inProgress() {
    Thread probe = new Thread(() -> {});
    try {
      Runtime.getRuntime().addShutdownHook(probe);
      Runtime.getRuntime().removeShutdownHook(probe);
      return false;
    } catch (IllegalStateException e) {
      return true;
    }
  }
}

package org.thumbseal.daemon;

/** Is told when a port changes for better or worse. May be called from several threads at once. */
@FunctionalInterface
public interface LinkWatcher {

  /**
   * One change, told once however often the port is tried meanwhile.
   *
   * @param text one line for a person, beginning with the address of the port
   */
  void changed(String text);

  /** A port stands somewhere else now; told each time, before any line about it. */
  default void became(String port, PortState state) {}
}

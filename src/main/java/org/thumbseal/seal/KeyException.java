package org.thumbseal.seal;

import org.thumbseal.json.Printable;

/** A key that cannot be used; the message is one line fit for a person and holds no secret. */
public final class KeyException extends Exception {
  private static final long serialVersionUID = 1L;

  private final boolean machineFailed;

  /** Says in one line what is wrong and what to do. */
  public KeyException(String message) {
    this(message, false);
  }

  private KeyException(String message, boolean machineFailed) {
    super(Printable.line(message));
    this.machineFailed = machineFailed;
  }

  /** Disk or permission, not the key, are to blame. */
  static KeyException machine(String message) {
    return new KeyException(message, true);
  }

  /** Whether the machine failed, rather than that the key is wrong. */
  public boolean machineFailed() {
    return machineFailed;
  }
}

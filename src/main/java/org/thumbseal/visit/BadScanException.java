package org.thumbseal.visit;

/** Text that names no pump; the message is one line for a person. */
public final class BadScanException extends Exception {
  private static final long serialVersionUID = 1L;

  private final Cause cause;

  /** What is wrong; a closed list, for programs. */
  public enum Cause {
    /** No id: nothing, too long, or with characters that are none. */
    BAD_ASSET("bad-asset"),
    /** A GS1 code that was not read right, or does not name a device. */
    BAD_CODE("bad-code"),
    /** A GS1 code of a kind of device, not of one. */
    NO_SERIAL("no-serial");

    private final String code;

    Cause(String code) {
      this.code = code;
    }

    /** Its word. */
    public String code() {
      return code;
    }
  }

  BadScanException(Cause cause, String message) {
    super(message);
    this.cause = cause;
  }

  /** What is wrong. */
  public Cause reason() {
    return cause;
  }
}

package org.thumbseal.link;

/**
 * A link that could not be opened. The message is part of a line for a person: what is wrong and
 * what to do, without the name of the link.
 */
public final class LinkUnavailable extends Exception {
  private static final long serialVersionUID = 1L;

  /** Kinds of failure that call for different remedies. */
  public enum Reason {
    /** There is no such port. */
    MISSING,
    /** There is no such file or simulation: what was asked for is a mistake. */
    UNKNOWN,
    /** Several ports fit what was asked for. */
    AMBIGUOUS,
    /** Another program holds it. */
    BUSY,
    /** This user may not open it. */
    DENIED,
    /** It is there and is of another kind: a directory, a plain file. */
    WRONG_KIND,
    /** The other end of the network does not answer. */
    UNREACHABLE,
    /** The native part of the serial library cannot be loaded; it will not be in this process. */
    NO_LIBRARY,
    /** Anything else. */
    FAILED
  }

  private final Reason reason;

  /** Takes the kind of failure and the words for a person. */
  public LinkUnavailable(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  /** Whether what was asked for is wrong, rather than that the machine cannot give it now. */
  public boolean isMistake() {
    return reason == Reason.UNKNOWN || reason == Reason.WRONG_KIND || reason == Reason.AMBIGUOUS;
  }

  /** The kind of failure. */
  public Reason reason() {
    return reason;
  }
}

package org.thumbseal.seal;

/** What a check of a sealed document can end in, from best to worst. */
public enum SealAnswer {
  /** Intact, in its place, and by a key that is trusted here. */
  TRUSTED_KEY("trusted-key", "good seal by a trusted key"),
  /** Intact and in its place, but nothing says whose key it is. */
  UNKNOWN_KEY("unknown-key", "good seal by an unknown key"),
  /** Intact in itself, but not in its place between the others. */
  BROKEN_CHAIN("broken-chain", "broken chain"),
  /** Altered, or never sealed. */
  BROKEN_SEAL("broken-seal", "broken seal");

  private final String code;
  private final String text;

  SealAnswer(String code, String text) {
    this.code = code;
    this.text = text;
  }

  /** The answer for programs. */
  public String code() {
    return code;
  }

  /** The answer for people. */
  public String text() {
    return text;
  }

  /** The worse of two. */
  public SealAnswer or(SealAnswer other) {
    return compareTo(other) >= 0 ? this : other;
  }
}

package org.thumbseal.wire;

/** Why a line, or a reading in a good line, was not taken. */
public enum RejectCause {
  /** More than {@value LineDecoder#LONGEST_LINE} bytes before the line end. */
  TOO_LONG("too-long"),
  /** No {@code *} and four upper-case hexadecimal digits at the end. */
  NO_CHECKSUM("no-checksum"),
  /** The checksum does not fit the body. */
  WRONG_CHECKSUM("wrong-checksum"),
  /** The fields are not those of the record, though the checksum fits where there is one. */
  MALFORMED("malformed"),
  /**
   * A counter or clock that no sensor could have sent at that moment; on lines without a checksum a
   * pressure too.
   */
  IMPLAUSIBLE("implausible");

  private final String code;

  RejectCause(String code) {
    this.code = code;
  }

  /** The name in result documents. */
  public String code() {
    return code;
  }
}

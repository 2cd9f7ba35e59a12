package org.thumbseal.guide;

/**
 * What the answers come to.
 *
 * @param code its name in documents
 * @param cause the likely one
 * @param next what to do; {@code ASSET} stands for the pump
 * @param who may do it
 */
public record Outcome(String code, String cause, String next, Who who) {
  /** Who may do what is to be done. Local rules decide in the end. */
  public enum Who {
    /** Whoever was shown how. */
    TRAINED("whoever was trained on this pump"),
    /** Not for those who look after pumps alone. */
    TECHNICIAN("a qualified technician only"),
    /** The supply is not the pump's. */
    ELECTRICIAN("whoever looks after the electrical supply of the house");

    private final String words;

    Who(String words) {
      this.words = words;
    }

    /** In words. */
    public String words() {
      return words;
    }
  }

  static Outcome trained(String code, String cause, String next) {
    return new Outcome(code, cause, next, Who.TRAINED);
  }

  static Outcome technician(String code, String cause, String next) {
    return new Outcome(code, cause, next, Who.TECHNICIAN);
  }

  /** The same for a pump that is named. */
  public Outcome of(String asset) {
    return new Outcome(code, cause, next.replace("ASSET", asset), who);
  }
}

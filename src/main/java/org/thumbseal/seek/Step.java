package org.thumbseal.seek;

/** What to do next. */
public sealed interface Step {
  /**
   * Block here and test.
   *
   * @param station counted from 0 at the patient end
   */
  record Block(int station) implements Step {}

  /**
   * The search is over.
   *
   * @param conclusion what was found
   */
  record Stop(Conclusion conclusion) implements Step {}
}

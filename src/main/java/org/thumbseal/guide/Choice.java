package org.thumbseal.guide;

/**
 * One answer to a question.
 *
 * @param code its name in documents
 * @param words for people
 * @param next code of the question or the outcome that it leads to
 */
public record Choice(String code, String words, String next) {
  static Choice yes(String next) {
    return new Choice("yes", "yes", next);
  }

  static Choice no(String next) {
    return new Choice("no", "no", next);
  }
}

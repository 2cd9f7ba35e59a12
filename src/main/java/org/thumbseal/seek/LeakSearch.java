package org.thumbseal.seek;

import java.time.Instant;
import java.util.Optional;
import org.thumbseal.quantity.Quantity;

/**
 * A search that came to its end, before it is sealed.
 *
 * @param id the same for the same tests of the same pump
 * @param about the pump and who searched
 * @param state the tests
 * @param conclusion what was found
 * @param searchedAt when it came to its end, to the millisecond
 */
public record LeakSearch(
    String id, About about, SearchState state, Conclusion conclusion, Instant searchedAt) {
  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-leak-search/1";

  /** What kind of document this is. */
  public static final String KIND = "leak-search";

  /**
   * The pump and who searched.
   *
   * @param asset id of the pump, 1 to 100 plain characters
   * @param by who searched, by a name of their own choice; absent where nobody said
   * @param jarLitres volume of the jar, L; absent where nobody said
   */
  public record About(String asset, Optional<String> by, Optional<Double> jarLitres) {}

  /** The speed by which vacuum lost became air let in, L/min. */
  public Optional<Quantity> speed() {
    return state.speed();
  }
}

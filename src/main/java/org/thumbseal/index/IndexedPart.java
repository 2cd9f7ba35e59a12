package org.thumbseal.index;

import java.time.Instant;
import java.util.Optional;

/**
 * A part that was replaced before a test that counts.
 *
 * @param asset the pump; absent where the test is not assigned
 * @param at start of the test; absent for a recording without a date
 * @param item such as {@code gasket}
 * @param part what was put in, as it was said
 * @param test id of the test
 */
public record IndexedPart(
    Optional<String> asset,
    Optional<Instant> at,
    String item,
    Optional<String> part,
    String test) {}

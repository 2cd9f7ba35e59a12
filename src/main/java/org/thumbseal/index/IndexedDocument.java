package org.thumbseal.index;

import java.time.Instant;
import java.util.Optional;

/**
 * A sealed document that counts, of whatever kind: where it is, for whoever wants to read it.
 *
 * @param kind such as {@code inspection}
 * @param at the instant that it is about, where it has one
 * @param note a remark that a correction added
 * @param origin which document it is
 */
public record IndexedDocument(
    String kind, Optional<Instant> at, Optional<String> note, IndexedTest.Origin origin) {}

package org.thumbseal.seek;

import java.util.Optional;
import org.thumbseal.quantity.Quantity;

/**
 * How much a stretch lets in.
 *
 * @param span which, with the vacuum it takes
 * @param leak air let in, mL/min at ambient pressure; absent where the speed of the pump is not
 *     known. A little below 0 where noise makes it so
 * @param atLeast whether the vacuum was too low for the leak to be choked, so that it lets in more
 *     at a higher one
 */
public record SectionLeak(Span span, Optional<Quantity> leak, boolean atLeast) {}

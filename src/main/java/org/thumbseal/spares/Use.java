package org.thumbseal.spares;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A part that was put in.
 *
 * @param day when
 * @param item what was replaced, such as {@code gasket}
 * @param part its name, as it was said at the bench
 * @param foretells whether it says something about use to come; not that on a pump since retired
 */
public record Use(LocalDate day, String item, Optional<String> part, boolean foretells) {}

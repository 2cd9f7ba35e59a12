package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.grade.Criteria;

/**
 * What somebody keeps in a list of pumps, as far as a test has use for it. A record that says the
 * same goes before it.
 *
 * @param id of the pump
 * @param description for people
 * @param location for people
 * @param equipment jar and rated flow
 * @param criteria limits of its own
 */
public record KnownPump(
    String id,
    Optional<String> description,
    Optional<String> location,
    Criteria.Equipment equipment,
    Optional<Criteria> criteria) {}

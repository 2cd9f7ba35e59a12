package org.thumbseal.finding;

import java.util.Optional;

/**
 * An earlier record of the same pump, when it was sound.
 *
 * @param id of its result
 * @param asset id of the pump, where it was assigned
 * @param signs what it looked like
 */
public record SoundRecord(String id, Optional<String> asset, Signs signs) {}

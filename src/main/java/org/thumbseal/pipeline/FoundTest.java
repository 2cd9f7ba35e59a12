package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * Something in a record that has a result, with what had been said until then: a record may go on
 * with another sensor, whose range and reference are not those of this test.
 *
 * @param event a test, or a start without one
 * @param sensor what the sensor had said of itself
 * @param ambient what it had said of the air
 * @param reference what its readings count from
 * @param ordinal counts the tests of the record from 1; starts without a test from 0 down, so that
 *     they do not change the ids of the tests after them
 */
record FoundTest(
    PhaseEvent event,
    Optional<Identity> sensor,
    Optional<Ambient> ambient,
    Reference reference,
    int ordinal) {}

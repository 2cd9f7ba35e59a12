package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.phase.TestWindow;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A test in a record, with what had been said until it began: a record may go on with another
 * sensor, whose range and reference are not those of this test.
 *
 * @param window its stretch of the record
 * @param sensor what the sensor had said of itself
 * @param ambient what it had said of the air
 * @param reference what its readings count from
 */
record FoundTest(
    TestWindow window, Optional<Identity> sensor, Optional<Ambient> ambient, Reference reference) {}

package org.thumbseal.record;

import java.time.Instant;
import java.util.Optional;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * When, where from and with what a test was recorded.
 *
 * @param startedAt wall clock at the first sample; absent where the record has no date
 * @param source port, address or file the samples came from
 * @param identity what the sensor said of itself, if it did
 * @param reference what its readings count from
 * @param jarLitres volume of the jar, L, if known
 * @param leakSearch the pump whose leak was sought, where the test is part of a search: made at any
 *     place of the suction path, it is no monthly test of that pump
 * @param start who said that the test begins; absent where nobody did
 */
public record TestFacts(
    Optional<Instant> startedAt,
    String source,
    Optional<Identity> identity,
    Reference reference,
    Optional<Double> jarLitres,
    Optional<String> leakSearch,
    Optional<Start> start) {
  /**
   * A start that was said.
   *
   * @param by who
   * @param at when, s from the first sample, device clock
   */
  public record Start(StartedBy by, double at) {}
}

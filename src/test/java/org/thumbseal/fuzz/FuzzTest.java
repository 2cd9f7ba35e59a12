package org.thumbseal.fuzz;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bounded run: every target, from a fixed seed. The long one is {@link Fuzz}. */
class FuzzTest {
  private static final long SEED = 20_260_302;

  @ParameterizedTest
  @CsvSource({
    "wire, 300000",
    "session, 15",
    "document, 20000",
    "directory, 200",
    "capture, 60",
    "table, 60",
    "columns, 2000",
    "criteria, 10000",
    "calibration, 5000",
    "sound-record, 3000",
    "trust, 3000",
    "key, 1000",
    "address, 20000"
  })
  void holds(String target, long count) throws Exception {
    new Campaign(target, Targets.of(target), SEED).run(0, count);
  }
}

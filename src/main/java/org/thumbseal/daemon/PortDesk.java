package org.thumbseal.daemon;

import java.util.Optional;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;

/**
 * Where people speak to a port: which pump is on the bench, what was looked at, and that a test
 * begins. What they say goes into the record of the port, and so into the next result.
 *
 * <p>For any thread. A call may wait for a test to be graded, and tells the {@link BenchListener}
 * before it returns: hold no lock then that the listener takes.
 */
public interface PortDesk {
  /** The address of the port. */
  String port();

  /**
   * Says what is known of the pump on the bench, in the place of all that was said before; {@link
   * Visit#NONE} takes it back. It stands until a test has its result; one that could not be judged
   * has to be repeated, and leaves it standing.
   */
  void visit(Visit visit);

  /**
   * Says that a test begins: the inlet is to be blocked within 90 s. In the place of an earlier
   * start.
   *
   * @param asset the pump, where it is said with it; what was found on it stands. It is taken even
   *     where the start is refused
   * @return why there is no start, and nothing where there is one
   */
  Optional<StartRefusal> start(StartedBy by, Optional<String> asset);

  /**
   * Says that from now on the tests are parts of a search for the leak of a pump: made without the
   * jar as often as not, they must not count as its monthly one, and so bear neither pump nor jar;
   * they are graded by its limits. What was said of the pump on the bench is taken back.
   *
   * @param asset the pump; empty: the tests are again what they were before
   * @return why not, within a test or where the pump must not be switched on; nothing where it is
   *     so
   */
  Optional<StartRefusal> seek(Optional<String> asset);
}

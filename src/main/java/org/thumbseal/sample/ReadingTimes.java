package org.thumbseal.sample;

import org.thumbseal.wire.WireRecord.Plain;

/** Gives readings their times, in order, and hands them on. */
interface ReadingTimes {
  void accept(long hostMicros, Plain reading);

  /** Nothing follows: nothing is held back any longer. */
  void end();
}

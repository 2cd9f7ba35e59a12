package org.thumbseal.phase;

import java.util.Locale;

/** The phases of an occlusion test. */
public enum Phase {
  /** Pump off, inlet open. */
  IDLE,
  /** Pump running, inlet open. */
  OPEN,
  /** Inlet blocked, vacuum climbing. */
  RISE,
  /** Inlet blocked, vacuum at its maximum. */
  HOLD,
  /** Inlet opened again. */
  RELEASE,
  /** Inlet still blocked, pump off. */
  DECAY;

  /** The name in result documents. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }
}

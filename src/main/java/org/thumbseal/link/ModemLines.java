package org.thumbseal.link;

/**
 * What is done with DTR and RTS, both in one call, when a serial port is opened: set one after the
 * other they can put a board into its boot loader.
 */
public enum ModemLines {
  /** Whatever the driver does by itself; nearly always it asserts both. */
  LEAVE,
  /** Both on: boards with native USB send nothing before. */
  ASSERT,
  /** Both off: keeps many boards from a reset, though not on every system. */
  CLEAR
}

package org.thumbseal.simulate;

import java.util.Iterator;
import java.util.List;

/**
 * One recording to be: the same scenario gives the same lines on every machine.
 *
 * @param plant what the sensor is put on first
 * @param sensor the sensor
 * @param line the way to the host
 * @param script what happens
 * @param seed of noise and line faults
 */
public record Scenario(Plant plant, Sensor sensor, Line line, Script script, long seed) {

  /**
   * The lines in order of arrival, made one after another as they are asked for, so hours of idling
   * take no memory.
   */
  public Iterator<TimedLine> lines() {
    return new Transport(this, new SensorStream(this));
  }

  /** What each occlusion test of the script really was; empty when the inlet is never blocked. */
  public List<TestTruth> truth() {
    return TruthFinder.of(this);
  }

  /** The same scenario with another plant. */
  public Scenario with(Plant other) {
    return new Scenario(other, sensor, line, script, seed);
  }

  /** The same scenario with another sensor. */
  public Scenario with(Sensor other) {
    return new Scenario(plant, other, line, script, seed);
  }

  /** The same scenario over another line. */
  public Scenario with(Line other) {
    return new Scenario(plant, sensor, other, script, seed);
  }

  /** The same scenario with another script. */
  public Scenario with(Script other) {
    return new Scenario(plant, sensor, line, other, seed);
  }
}

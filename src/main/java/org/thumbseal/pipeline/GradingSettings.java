package org.thumbseal.pipeline;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.grade.Criteria;

/**
 * What the user says about a test. What is not said here is looked for in the capture's header and
 * in what the sensor sends.
 *
 * @param criteria the limits
 * @param pump and its jar
 * @param place where the test is made
 * @param sensor that is read
 */
public record GradingSettings(
    Criteria criteria, GivenPump pump, GivenPlace place, GivenSensor sensor) {
  /** Nothing said, default criteria. */
  public static final GradingSettings DEFAULT =
      new GradingSettings(Criteria.DEFAULT, GivenPump.NONE, GivenPlace.NONE, GivenSensor.NONE);

  /** The same with other limits. */
  public GradingSettings withCriteria(Criteria limits) {
    return new GradingSettings(limits, pump, place, sensor);
  }

  /** The same with more said of the pump. */
  public GradingSettings withPump(UnaryOperator<GivenPump> more) {
    return new GradingSettings(criteria, more.apply(pump), place, sensor);
  }

  /** The same at a place. */
  public GradingSettings at(GivenPlace there) {
    return new GradingSettings(criteria, pump, there, sensor);
  }

  /** What is known of pumps; where it has criteria they go before those of all. */
  public KnownPumps pumps() {
    return place.pumps();
  }

  /** The same with these pumps known. */
  public GradingSettings withPumps(KnownPumps known) {
    return at(place.withPumps(known));
  }

  /** The same with the criteria that are known for a pump, if there are such. */
  public GradingSettings withCriteriaOf(Optional<String> asset) {
    return asset
        .flatMap(pumps()::of)
        .flatMap(KnownPump::criteria)
        .map(this::withCriteria)
        .orElse(this);
  }

  /** The same with more said of the sensor. */
  public GradingSettings withSensor(UnaryOperator<GivenSensor> more) {
    return new GradingSettings(criteria, pump, place, more.apply(sensor));
  }

  /**
   * The same for the pump that a record names: here, and nowhere else, the settings of a run become
   * those of one pump.
   */
  public GradingSettings forPumpOf(CaptureHeader header) {
    return new GradingSettings(criteria, pump.namedBy(header), place, sensor);
  }

  /**
   * The same for a record of another run, as for a replay without options: of this run only what no
   * header can hold.
   */
  public GradingSettings forRecordOf(CaptureHeader header) {
    GradingSettings named = forPumpOf(header);
    return new GradingSettings(
        named.criteria,
        named.pump.besidesHeader(),
        named.place.besidesHeader(),
        named.sensor.besidesHeader());
  }
}

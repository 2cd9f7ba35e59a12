package org.thumbseal.simulate;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import org.thumbseal.simulate.Act.PressKey;
import org.thumbseal.simulate.Act.ReportFault;
import org.thumbseal.simulate.Act.RestartSensor;
import org.thumbseal.wire.WireRecord.Reference;

/** What the sensor sends from its first sample to the end of the script. */
final class SensorStream implements Iterator<SentLine> {
  private static final double IDENTITY_SECONDS = 2;
  private static final double AMBIENT_SECONDS = 60;
  private static final double LARGEST_JITTER_PERIODS = 0.4;

  private final Sensor sensor;
  private final Bench bench;
  private final double end;
  private final List<Step> acts;
  private final Draw chance;
  private final Deque<SentLine> ready = new ArrayDeque<>();

  private int nextAct;
  private Ticks ticks;
  private double powerUp;
  private long samples;
  private double identityDue;
  private double ambientDue;

  SensorStream(Scenario scenario) {
    this.sensor = scenario.sensor();
    this.bench = new Bench(scenario.plant(), scenario.script());
    this.end = scenario.script().end();
    this.acts = scenario.script().steps().stream().filter(s -> concerns(s.act())).toList();
    this.chance = new Draw(scenario.seed(), "sensor");
    this.ticks = sensor.ticks();
  }

  @Override
  public boolean hasNext() {
    while (ready.isEmpty() && due() <= end) {
      sample();
    }
    return !ready.isEmpty();
  }

  @Override
  public SentLine next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    return ready.remove();
  }

  private static boolean concerns(Act act) {
    return act instanceof PressKey || act instanceof ReportFault || act instanceof RestartSensor;
  }

  private double due() {
    return powerUp + ticks.due(samples, sensor.identity().hertz());
  }

  private void sample() {
    double seconds = due() + jitter();
    if (nextAct < acts.size() && acts.get(nextAct).seconds() <= seconds) {
      play(acts.get(nextAct++));
      return;
    }
    introduce(seconds);
    bench.advance(seconds);
    send(seconds, Bodies.sample(ticks.counter(samples), stamp(seconds), reading(seconds)));
    samples++;
  }

  private double jitter() {
    if (samples == 0) {
      return 0;
    }
    double limit = LARGEST_JITTER_PERIODS / sensor.identity().hertz();
    return Math.max(-limit, Math.min(limit, ticks.jitter() * chance.gaussian()));
  }

  private void play(Step step) {
    double seconds = step.seconds();
    if (step.act() instanceof PressKey key) {
      send(seconds, Bodies.key(stamp(seconds), key.down()));
    } else if (step.act() instanceof ReportFault fault) {
      send(seconds, Bodies.fault(stamp(seconds), fault.code()));
    } else if (step.act() instanceof RestartSensor restart) {
      restart(seconds + restart.seconds());
    }
  }

  private void restart(double seconds) {
    ticks = ticks.afterRestart();
    powerUp = seconds;
    samples = 0;
    identityDue = seconds;
    ambientDue = seconds;
  }

  private void introduce(double seconds) {
    if (seconds >= identityDue) {
      identityDue += IDENTITY_SECONDS;
      send(seconds, Bodies.identity(sensor.identity()));
    }
    if (sensor.barometer() && seconds >= ambientDue) {
      ambientDue += AMBIENT_SECONDS;
      send(seconds, Bodies.ambient(stamp(seconds), bench.plant().weather()));
    }
  }

  private long stamp(double seconds) {
    return ticks.stamp(seconds - powerUp);
  }

  private long reading(double seconds) {
    double zero =
        sensor.identity().reference() == Reference.GAUGE ? bench.plant().weather().pascals() : 0;
    double noise = sensor.transducer().noise() * chance.gaussian();
    double pressure = bench.pascals() + bench.ripple() - zero;
    double read = sensor.transducer().read(pressure, noise + sensor.upsets().at(seconds, chance));
    return Math.round(clip(read));
  }

  private double clip(double pascals) {
    double low = sensor.identity().lowPascals();
    return Math.max(low, Math.min(sensor.identity().highPascals(), pascals));
  }

  private void send(double seconds, String line) {
    ready.add(new SentLine(seconds, line));
  }
}

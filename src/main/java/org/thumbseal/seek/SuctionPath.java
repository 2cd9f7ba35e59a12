package org.thumbseal.seek;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The way of the air from the patient to the pump, as stations and the sections between them.
 *
 * @param stations from the patient end inwards, 2 to 10
 * @param jarInlet which of them is the jar inlet, where the monthly test is made; the jar lies in
 *     the section behind it
 */
public record SuctionPath(List<Station> stations, int jarInlet) {
  private static final int FEWEST = 2;
  private static final int MOST = 10;

  /**
   * The usual one. Which section leaks most often is common practice, no published source: lid
   * gasket, jar joint, tube joints, then inside the unit; the numbers are a guess that keeps this
   * order. A pump that is weak by itself looks like a leak at first, and is as frequent.
   */
  public static final SuctionPath USUAL =
      new SuctionPath(
          List.of(
              new Station("patient end of the tube", new Section("the patient tube", 20)),
              new Station("jar inlet", new Section("the jar with its lid gasket", 40)),
              new Station("jar outlet", new Section("the filter with its holder", 8)),
              new Station("pump side of the filter", new Section("the hose to the pump", 4)),
              new Station("pump inlet", new Section("the pump", 28))),
          1);

  /** Keeps a copy, and refuses what is no path, in words for a person. */
  public SuctionPath {
    stations = List.copyOf(stations);
    demand(
        stations.size() >= FEWEST && stations.size() <= MOST,
        "there must be " + FEWEST + " to " + MOST + " stations, not " + stations.size());
    demand(
        jarInlet >= 0 && jarInlet < stations.size() - 1,
        "the jar inlet must be one of the stations before the last");
    Set<String> names = new HashSet<>();
    stations.forEach(
        s -> demand(names.add(s.name()), "the station '" + s.name() + "' is there twice"));
  }

  private static void demand(boolean condition, String otherwise) {
    if (!condition) {
      throw new IllegalArgumentException(otherwise);
    }
  }

  /** How many stations there are; so many sections too, the pump being the last. */
  public int size() {
    return stations.size();
  }

  /** The station nearest to the pump. */
  public int last() {
    return stations.size() - 1;
  }

  /** Name of a station, counted from 0 at the patient end. */
  public String station(int at) {
    return stations.get(at).name();
  }

  /** Name of the section behind a station. */
  public String section(int at) {
    return stations.get(at).inward().name();
  }

  /** Whether a test at a station has the jar in it. */
  public boolean hasJar(int station) {
    return station <= jarInlet;
  }

  /**
   * The station that parts a stretch of sections most evenly by their shares; of two the outer one.
   *
   * @param from first section of the stretch
   * @param to first section behind it; one more than {@link #last} to have the pump in it
   */
  int dividing(int from, int to) {
    int best = from + 1;
    for (int at = best + 1; at < to; at++) {
      if (unevenness(from, at, to) < unevenness(from, best, to)) {
        best = at;
      }
    }
    return best;
  }

  private int unevenness(int from, int at, int to) {
    return Math.abs(share(from, at) - share(at, to));
  }

  private int share(int from, int to) {
    return IntStream.range(from, to).map(i -> stations.get(i).inward().share()).sum();
  }
}

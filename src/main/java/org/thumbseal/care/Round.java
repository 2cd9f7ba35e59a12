package org.thumbseal.care;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is due as one walks it: from place to place, at each pump all that it needs.
 *
 * @param stops in the order of their names, numbers in them by value; pumps without a place last
 * @param counts how many things are due, by urgency
 */
public record Round(List<Stop> stops, Map<Urgency, Integer> counts) {
  /** Keeps copies. */
  public Round {
    stops = List.copyOf(stops);
    counts = Map.copyOf(counts);
  }

  /**
   * One place.
   *
   * @param location its name; empty for pumps of which nobody said where they are
   * @param pumps those that stand there
   */
  public record Stop(String location, List<Visited> pumps) {}

  /**
   * One pump.
   *
   * @param pump which
   * @param dues what it needs, at least one
   */
  public record Visited(CaredFor pump, List<Due> dues) {}

  /**
   * The round.
   *
   * @param dues everything that will be due
   * @param upTo what is less urgent is left for another day, but counted
   */
  public static Round of(List<Due> dues, Urgency upTo) {
    Map<Urgency, Integer> counts = new EnumMap<>(Urgency.class);
    Map<String, Map<String, Visited>> places = new TreeMap<>(NaturalOrder.EMPTY_LAST);
    for (Due due : dues) {
      counts.merge(due.urgency(), 1, Integer::sum);
      if (due.urgency().compareTo(upTo) <= 0) {
        CaredFor pump = due.pump();
        places
            .computeIfAbsent(pump.location(), place -> new TreeMap<>(NaturalOrder.EMPTY_LAST))
            .computeIfAbsent(pump.id(), id -> new Visited(pump, new ArrayList<>()))
            .dues()
            .add(due);
      }
    }
    List<Stop> stops = new ArrayList<>();
    places.forEach((place, pumps) -> stops.add(new Stop(place, List.copyOf(pumps.values()))));
    return new Round(stops, counts);
  }

  /** How many things are so urgent. */
  public int count(Urgency urgency) {
    return counts.getOrDefault(urgency, 0);
  }
}

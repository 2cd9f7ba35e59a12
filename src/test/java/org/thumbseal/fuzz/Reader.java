package org.thumbseal.fuzz;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.link.LinkAddressException;

/** A reader of one kind of file that has a single checked answer to everything it does not take. */
final class Reader implements Target {
  /** Reads; what it throws is judged by its class. */
  interface Taker {
    void take(byte[] input) throws Exception;
  }

  /** Their packages stand above the one that escapes; the commands do it when they print. */
  private static final Set<Class<?>> ESCAPED_LATER =
      Set.of(CaptureFormatException.class, LinkAddressException.class);

  private final List<byte[]> originals;
  private final Class<? extends Exception> refusal;
  private final Taker taker;
  private final Map<String, Long> outcomes = new TreeMap<>();

  Reader(Collection<byte[]> originals, Class<? extends Exception> refusal, Taker taker) {
    this.originals = List.copyOf(originals);
    this.refusal = refusal;
    this.taker = taker;
  }

  @Override
  public Attempt next(Dice dice) {
    return new Reading(Mutation.some(dice.of(originals), dice.of(originals), dice), this::read);
  }

  private void read(byte[] input) throws Exception {
    try {
      taker.take(input);
      outcomes.merge("taken", 1L, Long::sum);
    } catch (Exception e) {
      if (!refusal.isInstance(e)) {
        throw e;
      }
      if (!ESCAPED_LATER.contains(refusal)) {
        Said.requirePlain(String.valueOf(e.getMessage()));
      }
      outcomes.merge("refused", 1L, Long::sum);
    }
  }

  @Override
  public String figures() {
    return outcomes + "\n";
  }
}

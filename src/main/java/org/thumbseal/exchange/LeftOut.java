package org.thumbseal.exchange;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Tells what an export leaves out, the first few of each kind by name, and counts all. */
public final class LeftOut {
  private static final int NAMED = 10;

  private final Consumer<String> out;
  private final Map<Why, Long> counts = new EnumMap<>(Why.class);
  private long exported;

  /** Why a file is not in it. */
  private enum Why {
    UNREADABLE("unreadable"),
    REFUSED("not known here"),
    SEAL("without a trusted seal"),
    VOID("void, which the columns would not show"),
    OTHER("of an id that was there already, with other content");

    private final String text;

    Why(String text) {
      this.text = text;
    }
  }

  /**
   * Nothing yet.
   *
   * @param out is told a line about each
   */
  public LeftOut(Consumer<String> out) {
    this.out = out;
  }

  void exported(SealedResult sealed) {
    exported++;
    if (!sealed.seal().isTrusted()) {
      out.accept(sealed.file() + ": exported and marked: " + sealed.seal().text());
    }
  }

  void refused(Path file, ResultRefused why) {
    tell(why.isReadable() ? Why.REFUSED : Why.UNREADABLE, file, why.why());
  }

  void unverified(SealedResult sealed) {
    tell(Why.SEAL, sealed.file(), sealed.seal().text());
  }

  void voided(SealedResult sealed) {
    tell(Why.VOID, sealed.file(), "void: " + sealed.standing().voided().orElse(""));
  }

  /** The same document in two places is nothing to speak of. */
  void again(SealedResult sealed, boolean same) {
    if (!same) {
      tell(Why.OTHER, sealed.file(), "there is another result of the same test, which stands");
    }
  }

  private void tell(Why why, Path file, String text) {
    long count = counts.merge(why, 1L, Long::sum);
    if (count <= NAMED) {
      out.accept(file + ": left out: " + text);
    }
  }

  /** How many were written. */
  public long exported() {
    return exported;
  }

  /** Whether something could not be read at all. */
  public boolean isUnreadable() {
    return counts.containsKey(Why.UNREADABLE);
  }

  /** Whether something is missing that somebody has to look at. */
  public boolean isLacking() {
    return counts.keySet().stream().anyMatch(why -> why != Why.VOID);
  }

  /** All in one line; empty where nothing was left out. */
  public String summary() {
    return counts.isEmpty()
        ? ""
        : exported
            + " exported, left out: "
            + counts.entrySet().stream()
                .map(e -> e.getValue() + " " + e.getKey().text)
                .collect(Collectors.joining(", "));
  }
}

package org.thumbseal.cli;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.archive.ChainSummary;
import org.thumbseal.archive.DirectorySummary;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.SealAnswer;

/** What of a directory was checked, in words. */
final class DirectoryText {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT).withZone(ZoneOffset.UTC);

  private DirectoryText() {}

  /** How much, for the first line. */
  static String seen(DirectorySummary summary) {
    return count(summary.documents(), "document")
        + " and "
        + count(summary.captures(), "capture")
        + " in "
        + count(summary.chains().size(), "chain");
  }

  /** Whose and from when, and what could not be checked; a line each. */
  static List<String> details(DirectorySummary summary) {
    List<String> lines = new ArrayList<>();
    summary.chains().forEach(chain -> lines.add(chain(chain)));
    if (summary.withoutCapture() > 0) {
      lines.add(
          count(summary.withoutCapture(), "document")
              + " without a capture: there the seal and the place in the chain is all to check");
    }
    return lines;
  }

  static String count(long number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }

  private static String chain(ChainSummary chain) {
    String who = Printable.line(chain.signer());
    return count(chain.documents(), "document") + " by " + who + period(chain) + unchecked(chain);
  }

  private static String period(ChainSummary chain) {
    return chain.period().map(p -> days(p.from(), p.to())).orElse("");
  }

  private static String days(Instant from, Instant to) {
    String first = DAY.format(from);
    String last = DAY.format(to);
    return ", " + (first.equals(last) ? first : first + " to " + last);
  }

  private static String unchecked(ChainSummary chain) {
    return chain.answer() == SealAnswer.UNKNOWN_KEY
        ? "; whose key that is was not checked, nobody vouches for it here (--trust)"
        : "";
  }
}

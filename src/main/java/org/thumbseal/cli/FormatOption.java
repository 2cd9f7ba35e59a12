package org.thumbseal.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.wire.LineFormatException;
import org.thumbseal.wire.PlainLines;
import picocli.CommandLine.Option;

/** How a board writes its lines that only prints numbers. */
final class FormatOption {
  @Option(
      names = "--format",
      paramLabel = "lines:SPEC",
      description = {
        "for a board that prints plain numbers: where pressure (and time) stand, in what unit, and"
            + " what sign vacuum has. By column: lines:column=2,time=1:ms,unit=kPa,sign=vacuum"
            + " (also columns=N, separator=comma|semicolon|tab|space, range=LOW..HIGH); or by an"
            + " expression for the whole line: 'lines:/P=(?<p>-?\\d+) t=(?<t>\\d+)/,"
            + "unit=Pa,time=us,sign=gauge'.",
        "sign is gauge (negative under vacuum), vacuum (positive) or absolute; without a time the"
            + " moment of arrival counts, and rise times are less certain for it"
      })
  private @Nullable String format;

  /** The format that was given. */
  Optional<PlainLines> format() {
    String text = format;
    if (text == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(PlainLines.parse(text));
    } catch (LineFormatException e) {
      throw Failure.usage("--" + e.getMessage());
    }
  }

  /** Refuses ports on which such lines cannot come, or not with their times. */
  void require(List<LinkAddress> ports) {
    Optional<PlainLines> given = format();
    if (given.isEmpty()) {
      return;
    }
    for (LinkAddress port : ports) {
      if (AutoPort.isMeant(port)) {
        throw Failure.usage(
            "--port auto finds sensors by what they say of themselves, and plain lines say nothing:"
                + " name the port");
      }
      if (port instanceof LinkAddress.Simulated) {
        throw Failure.usage("--format: simulated sensors speak the wire protocol: leave it out");
      }
      if (port instanceof LinkAddress.RawFile && !given.get().isTimed()) {
        throw Failure.usage(
            "--format: lines of a file all arrive at once: the format needs the board's own time"
                + " (time=...)");
      }
    }
  }
}

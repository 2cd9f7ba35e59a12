package org.thumbseal.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Corrections;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.StoredResults;
import org.thumbseal.archive.Verification;
import org.thumbseal.guided.GuidedSearch;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.record.Standing;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** Sealed results of tests that were made before, for a search to begin with. */
final class EarlierTests {
  private final String asset;
  private final TrustStore trust;
  private final Consumer<String> remarks;
  private final Verification verification;
  private final Map<Path, Corrections> corrections = new HashMap<>();

  /** Of a pump; each must bear a trusted seal. */
  EarlierTests(String asset, TrustStore trust, Consumer<String> remarks) {
    this.asset = asset;
    this.trust = trust;
    this.remarks = remarks;
    this.verification = new Verification(trust);
  }

  /** Hands one {@code --from} to a search: a result, {@code N=} a result, or a folder of them. */
  void into(GuidedSearch search, String from) {
    if (from.matches("[1-9][0-9]?=.+")) {
      String number = from.substring(0, from.indexOf('='));
      int stations = search.state().path().size();
      if (Integer.parseInt(number) > stations) {
        throw Failure.usage("--from " + from + ": there are " + stations + " stations");
      }
      take(search, Integer.parseInt(number) - 1, Path.of(from.substring(number.length() + 1)));
      return;
    }
    for (Path file : files(Path.of(from))) {
      search.station().ifPresent(station -> take(search, station, file));
    }
  }

  private List<Path> files(Path given) {
    if (!Files.isDirectory(given)) {
      return List.of(given);
    }
    try {
      List<Path> files = new ArrayList<>(StoredResults.in(given));
      Collections.reverse(files);
      return files;
    } catch (ArchiveException e) {
      throw Failure.usage("--from " + e.getMessage());
    }
  }

  private void take(GuidedSearch search, int station, Path file) {
    try {
      ObjectNode result = JsonGate.read(file);
      requireGood(file);
      requireOfTheSearch(file, result);
      requireOfThePump(file, standing(file, result));
      search.take(station, result, file);
    } catch (JsonRefusedException e) {
      throw Failure.usage("--from " + file + ": " + e.getMessage());
    } catch (IllegalArgumentException e) {
      throw Failure.usage("--from " + file + ": " + e.getMessage());
    }
  }

  private void requireGood(Path file) {
    Outcome outcome = verification.file(file);
    if (outcome instanceof Outcome.Answered a && a.answer() != SealAnswer.TRUSTED_KEY) {
      throw Failure.notPassed(
          "--from "
              + file
              + ": not used: "
              + a.answer().text()
              + (a.remark().isEmpty() ? "" : ": " + a.remark()));
    } else if (outcome instanceof Outcome.Unreadable u) {
      throw Failure.usage("--from " + file + ": " + u.reason());
    }
  }

  private Standing standing(Path file, ObjectNode result) {
    Optional<Path> directory = Archive.directoryOf(file);
    return directory
        .map(this::corrections)
        .orElseGet(() -> Corrections.together(List.of()))
        .standing(result);
  }

  private Corrections corrections(Path directory) {
    return corrections.computeIfAbsent(directory, this::read);
  }

  private Corrections read(Path directory) {
    try {
      return Corrections.in(directory, trust, remarks);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  private void requireOfTheSearch(Path file, ObjectNode result) {
    String sought = result.at("/test/leakSearch").asString(asset);
    if (!sought.equals(asset)) {
      throw Failure.usage("--from " + file + ": is of the leak search of another pump, " + sought);
    }
  }

  private void requireOfThePump(Path file, Standing standing) {
    if (standing.voided().isPresent()) {
      throw Failure.usage("--from " + file + ": is void; it does not count");
    }
    Optional<String> other = standing.asset().filter(id -> !id.equals(asset));
    if (other.isPresent()) {
      throw Failure.usage("--from " + file + ": is of another pump, " + other.get());
    }
  }
}

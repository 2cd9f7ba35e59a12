package org.thumbseal.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.json.DocumentView;

/** The rows of an occlusion test beyond the one that every document has. */
final class TestRows {
  /** What the program measures; a name that it does not know is left in the document. */
  static final List<String> NAMES =
      List.of(
          "openVacuum",
          "riseTime",
          "maximumVacuum",
          "timeConstant",
          "asymptote",
          "pumpingSpeed",
          "freeAirFlow",
          "leakWhilePumping",
          "ultimatePressure",
          "leakRate",
          "decayRate");

  private static final String NOT_MADE = "not-checked";

  private final DocumentView view;
  private final String id;
  private final List<Row> rows = new ArrayList<>();

  TestRows(DocumentView view, String id) {
    this.view = view;
    this.id = id;
  }

  List<Row> all() {
    rows.add(testRow());
    NAMES.forEach(this::addQuantity);
    addReasons();
    addFindings();
    addChecks();
    return rows;
  }

  private Row testRow() {
    return Row.of(
        Table.TESTS,
        id,
        view.number("/test/occludedAt"),
        text("/test/start/by"),
        view.number("/test/ambient/quantity/value"),
        text("/test/ambient/from"),
        view.number("/test/jar/value"),
        text("/test/sensor/calibration").or(() -> text("/test/sensor/calibration/id")),
        text("/criteria/name"),
        view.number("/criteria/rise/value"),
        view.number("/criteria/riseTimeLimit/value"),
        view.number("/criteria/maximumVacuumLimit/value"),
        view.number("/criteria/openVacuumLimit/value"),
        view.number("/criteria/ratedSpeed/value"),
        view.number("/criteria/altitudeFactor"),
        text("/evidence/sha256"),
        leakSearch(view));
  }

  /** The pump whose leak was sought, where the test is part of a search. */
  static Optional<String> leakSearch(DocumentView view) {
    return text(view, "/test/leakSearch");
  }

  /** Why a test of a search counts nowhere, whatever a correction makes of it. */
  static Optional<String> uncounted(Optional<String> leakSearch) {
    return leakSearch.map(pump -> "part of the leak search of " + pump);
  }

  private void addQuantity(String name) {
    String place = "/measurements/" + name;
    view.quantity(place)
        .ifPresent(
            measured ->
                rows.add(
                    Row.of(
                        Table.QUANTITIES,
                        id,
                        name,
                        measured.value(),
                        Texts.clean(measured.unit()),
                        measured.expanded(),
                        view.number(place + "/coverageFactor"),
                        text(place + "/bound"))));
  }

  private void addReasons() {
    int place = 0;
    for (DocumentView reason : view.list("/reasons")) {
      rows.add(Row.of(Table.REASONS, id, place++, text(reason, "/code").orElse("")));
    }
  }

  private void addFindings() {
    int place = 0;
    for (DocumentView finding : view.list("/findings")) {
      rows.add(
          Row.of(
              Table.FINDINGS,
              id,
              place++,
              text(finding, "/code").orElse(""),
              finding.number("/confidence").orElse(0.0)));
    }
  }

  private void addChecks() {
    int place = 0;
    for (DocumentView check : view.list("/checks")) {
      String state = text(check, "/state").orElse(NOT_MADE);
      if (!state.equals(NOT_MADE)) {
        rows.add(
            Row.of(
                Table.CHECKS,
                id,
                place,
                text(check, "/item").orElse(""),
                state,
                text(check, "/part"),
                text(check, "/reason")));
      }
      place++;
    }
  }

  private Optional<String> text(String place) {
    return text(view, place);
  }

  private static Optional<String> text(DocumentView from, String place) {
    return from.text(place).map(Texts::clean);
  }
}

package org.thumbseal.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.json.CorrectionReader;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.record.Correction;
import org.thumbseal.seal.LedgerEntry;
import tools.jackson.databind.node.ObjectNode;

/** What a document becomes in the tables. Of a kind that is not known, it is one row. */
final class DocumentRows {
  private static final String ID = "[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}";
  private static final List<String> DATES =
      List.of(
          "/test/startedAt",
          "/calibratedAt",
          "/correctedAt",
          "/recordedAt",
          "/startedAt",
          "/searchedAt");

  private final DocumentView view;
  private final String id;
  private final Optional<Correction> correction;
  private final List<Row> rows = new ArrayList<>();

  /**
   * Reads a document whose seal was checked.
   *
   * @throws JsonRefusedException with half a sentence if no row can be made of it
   */
  DocumentRows(ObjectNode document, LedgerEntry entry, String path) throws JsonRefusedException {
    this.view = DocumentView.of(document);
    this.id = requireId();
    this.correction =
        CorrectionReader.isCorrection(document)
            ? Optional.of(CorrectionReader.read(document))
            : Optional.empty();
    rows.add(documentRow(entry, path));
    addOwn();
  }

  String id() {
    return id;
  }

  Optional<String> corrects() {
    return correction.map(c -> c.corrects().digest());
  }

  List<Row> all() {
    return rows;
  }

  private String requireId() throws JsonRefusedException {
    return view.text("/id")
        .filter(text -> text.matches(ID))
        .orElseThrow(() -> new JsonRefusedException("has no id as documents have"));
  }

  private String kind() throws JsonRefusedException {
    return name("/kind").orElseThrow(() -> new JsonRefusedException("does not say its kind"));
  }

  private Row documentRow(LedgerEntry entry, String path) throws JsonRefusedException {
    Optional<String> asset = name("/asset/id");
    Optional<String> sensor = name("/test/sensor/id").or(() -> text("/sensor/id"));
    Optional<String> none = Optional.empty();
    return Row.of(
        Table.DOCUMENTS,
        id,
        kind(),
        happenedAt(),
        asset,
        verdict(),
        verdict().flatMap(test -> TestRows.uncounted(TestRows.leakSearch(view))),
        none,
        none,
        none,
        0,
        asset,
        sensor.filter(s -> s.length() <= Texts.LONGEST_NAME),
        Texts.clean(path),
        entry.kid(),
        entry.position().sequence(),
        entry.digest());
  }

  private Optional<String> verdict() throws JsonRefusedException {
    return kind().equals("occlusion-test")
        ? Optional.of(text("/verdict").orElse("invalid"))
        : Optional.empty();
  }

  private Optional<String> happenedAt() {
    return DATES.stream()
        .map(place -> Texts.instant(view.text(place)))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private void addOwn() throws JsonRefusedException {
    switch (kind()) {
      case "occlusion-test" -> rows.addAll(new TestRows(view, id).all());
      case Correction.KIND -> addCorrection();
      case "inspection" -> rows.add(inspectionRow());
      case "leak-search" -> rows.add(leakSearchRow());
      case "calibration" -> rows.add(calibrationRow());
      default -> {
        // What it is about stands in the row that every document has.
      }
    }
  }

  private void addCorrection() throws JsonRefusedException {
    name("/change/asset/id");
    correction.ifPresent(c -> rows.add(correctionRow(c)));
  }

  private Row correctionRow(Correction correction) {
    Correction.Said said = correction.said();
    return Row.of(
        Table.CORRECTIONS,
        id,
        Texts.clean(correction.corrects().id()),
        correction.corrects().digest(),
        correction.number(),
        Texts.of(said.at()),
        said.by().map(Texts::clean),
        said.change().asset().map(Texts::clean),
        said.change().note().map(Texts::clean),
        said.change().voided().map(gone -> gone ? 1 : 0),
        said.reason().map(Texts::clean));
  }

  private Row inspectionRow() throws JsonRefusedException {
    Optional<Integer> inOrder =
        view.has("/inOrder") ? Optional.of(view.isTrue("/inOrder") ? 1 : 0) : Optional.empty();
    return Row.of(
        Table.INSPECTIONS,
        id,
        name("/work").orElseThrow(() -> new JsonRefusedException("does not say what was done")),
        Texts.day(view.text("/on"))
            .or(() -> happenedAt().map(at -> at.substring(0, "2026-01-01".length())))
            .orElseThrow(() -> new JsonRefusedException("does not say when it was done")),
        inOrder,
        text("/by"));
  }

  /** A work that was done; whether the pump is fit for use is no matter of it. */
  private Row leakSearchRow() throws JsonRefusedException {
    Optional<Integer> unsaid = Optional.empty();
    String day =
        happenedAt()
            .map(at -> at.substring(0, "2026-01-01".length()))
            .orElseThrow(() -> new JsonRefusedException("does not say when it was done"));
    return Row.of(Table.INSPECTIONS, id, "leak-search", day, unsaid, text("/by"));
  }

  private Row calibrationRow() {
    return Row.of(
        Table.CALIBRATIONS,
        id,
        Texts.day(view.text("/due")),
        text("/by"),
        text("/reference/name"),
        text("/reference/certificate"),
        view.number("/line/gain/value"),
        view.number("/line/gain/expandedUncertainty"),
        view.number("/line/offset/value"));
  }

  private Optional<String> text(String place) {
    return view.text(place).map(Texts::clean);
  }

  /** A text by which rows are looked for. */
  private Optional<String> name(String place) throws JsonRefusedException {
    Optional<String> text = text(place);
    if (text.filter(t -> t.length() > Texts.LONGEST_NAME).isPresent()) {
      throw new JsonRefusedException(
          "has a longer " + place.substring(1).replace('/', '.') + " than any");
    }
    return text;
  }
}

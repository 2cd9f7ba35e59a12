package org.thumbseal.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.care.Inspection;
import org.thumbseal.index.IndexedDocument;
import org.thumbseal.index.IndexedWork;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.InspectionReader;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Deed.Answer;
import org.thumbseal.refer.Deed.Told;
import tools.jackson.databind.node.ObjectNode;

/**
 * What people did to a pump, out of the index and the documents it names. A kind of document that
 * is to stand on the sheet of a referral is read here and nowhere else.
 *
 * @param records the index
 * @param files where the documents lie
 * @param zone whose calendar counts
 */
record DeedRecord(Records records, QuotedFiles files, ZoneId zone) {
  private static final String CAUTION = "caution-";
  private static final String NOT_AT_HAND = "its document is not at hand";

  /** In the order of their days. */
  List<Deed> of(String asset) throws RecordsException {
    Map<String, IndexedWork> works = new HashMap<>();
    records.works(asset).forEach(work -> works.put(work.said().id(), work));
    List<Deed> deeds = new ArrayList<>();
    for (IndexedDocument document : records.documents(asset)) {
      deed(document, Optional.ofNullable(works.get(document.origin().id()))).ifPresent(deeds::add);
    }
    deeds.sort(Comparator.comparing(Deed::on));
    return deeds;
  }

  private Optional<Deed> deed(IndexedDocument document, Optional<IndexedWork> work) {
    return switch (document.kind()) {
      case Inspection.KIND -> work.map(done -> inspection(document, done));
      case Deed.LEAK_SEARCH -> document.at().map(at -> search(document, day(at)));
      default -> Optional.empty();
    };
  }

  private LocalDate day(Instant at) {
    return LocalDate.ofInstant(at, zone);
  }

  private Deed inspection(IndexedDocument document, IndexedWork done) {
    return new Deed(
        done.work(),
        done.on(),
        done.said().by(),
        told(document, done),
        ReferralRecord.source(document.origin()));
  }

  private Told told(IndexedDocument document, IndexedWork done) {
    // The guide finds no pump fit for use: that it did not is no finding.
    Optional<Boolean> inOrder =
        done.work().equals(Deed.TROUBLE) ? Optional.empty() : done.said().inOrder();
    List<String> lines = new ArrayList<>();
    List<Answer> answers = List.of();
    Optional<Inspection.More> more = files.document(document.origin()).flatMap(DeedRecord::more);
    if (more.isPresent()) {
      more.get().outcome().ifPresent(o -> lines.add(outcome(o)));
      more.get().note().ifPresent(lines::add);
      answers = answers(more.get());
    } else if (done.work().equals(Deed.TROUBLE)) {
      lines.add(NOT_AT_HAND);
    }
    document.note().ifPresent(lines::add);
    return new Told(inOrder, lines, answers);
  }

  private static String outcome(Inspection.Outcome outcome) {
    return outcome.cause() + " " + outcome.next() + " (" + outcome.who() + ")";
  }

  private static Optional<Inspection.More> more(ObjectNode document) {
    try {
      return Optional.of(InspectionReader.read(document).said().more());
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }

  private static List<Answer> answers(Inspection.More more) {
    return more.answers().stream()
        .filter(answer -> !answer.question().startsWith(CAUTION))
        .map(
            answer ->
                answer
                    .words()
                    .map(words -> new Answer(words.question(), words.answer()))
                    .orElseGet(() -> new Answer(answer.question(), answer.answer())))
        .toList();
  }

  private Deed search(IndexedDocument document, LocalDate on) {
    Optional<DocumentView> view = files.document(document.origin()).map(DocumentView::of);
    List<String> lines =
        view.map(
                v ->
                    Stream.of(v.text("/conclusion/text"), v.text("/conclusion/advice"))
                        .flatMap(Optional::stream)
                        .toList())
            .orElse(List.of(NOT_AT_HAND));
    return new Deed(
        Deed.LEAK_SEARCH,
        on,
        view.flatMap(v -> v.text("/by")),
        new Told(Optional.empty(), lines, List.of()),
        ReferralRecord.source(document.origin()));
  }
}

package org.thumbseal.report;

import java.util.List;
import org.thumbseal.history.History;
import org.thumbseal.history.PastTest;

/** The tests before which a part was replaced; they are numbered in picture and list alike. */
final class HistoryChanges {
  private HistoryChanges() {}

  static List<PastTest> of(History history) {
    return history.tests().stream()
        .filter(t -> t.at().isPresent() && t.outcome().voided().isEmpty())
        .filter(t -> !t.setting().replaced().isEmpty())
        .toList();
  }
}

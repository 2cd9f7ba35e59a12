package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.thumbseal.history.DrawnHistory;
import org.thumbseal.history.History;

class HistoryPageTest {
  private static String page(History history) {
    return HistoryPage.html(history, ZoneOffset.UTC);
  }

  @Test
  void wearSaysWhenTheLimitIsReached() {
    String page = page(HistoryPictures.wear());

    assertThat(page)
        .contains("<h1>SP-014: tests so far</h1>", "Maternity ward")
        .containsPattern("class=\"when\">Reaches its limit of 10 s likeliest in [A-Z][a-z]{2} 2027")
        .contains("void: hose of another pump", "1</text>", "gasket (gasket 60 mm)");
  }

  @Test
  void aRepairIsAStepThatIsExplained() {
    assertThat(page(HistoryPictures.repaired()))
        .contains("when something was replaced", "hydrophobic filter")
        .doesNotContain("class=\"when\"");
  }

  @Test
  void threeTestsSayThatTheySayNothing() {
    History few = new DrawnHistory(4).months(3, i -> 7).of("SP-044", "pump", "Theatre");
    assertThat(page(few)).contains("fewer than 6 visits").doesNotContain("class=\"when\"");
  }

  @Test
  void aPageLoadsNothingAndRunsNothing() {
    String page = page(HistoryPictures.wear());
    assertThat(page)
        .contains("default-src &#39;none&#39;")
        .doesNotContain("<script", "http://", "https://", "url(");
  }

  @Test
  void whatComesFromOutsideIsMadeHarmless() {
    String evil = "<script>x</script>\"'&\u202e";
    History history =
        new DrawnHistory(4)
            .months(8, i -> 7)
            .replaced(3, evil)
            .voided(5, evil)
            .of(evil, evil, evil);

    assertThat(page(history)).doesNotContain("<script", "\u202e").contains("&lt;script&gt;");
  }

  @Test
  void theSameHistoryGivesTheSameBytes() {
    assertThat(page(HistoryPictures.wear())).isEqualTo(page(HistoryPictures.wear()));
  }

  @Test
  void datesAreOfThePlace() {
    History wear = HistoryPictures.wear();
    assertThat(HistoryPage.html(wear, ZoneId.of("Africa/Nairobi"))).contains("17 Nov 2026, 15:00");
    assertThat(page(wear)).contains("17 Nov 2026, 12:00");
  }

  @Test
  void theFleetHasOneRowAPumpAndTheWorstOnTop() {
    String page = FleetPage.html(HistoryPictures.fleet(), DrawnHistory.TODAY, ZoneOffset.UTC);
    String rows = page.substring(page.indexOf("<tbody>"));

    assertThat(rows.split("<tr ", -1)).hasSize(61);
    assertThat(rows.indexOf("class=\"failed\"")).isLessThan(rows.indexOf("class=\"heading\""));
    assertThat(rows.lastIndexOf("class=\"heading\"")).isLessThan(rows.indexOf("class=\"none\""));
    assertThat(rows).containsPattern("reaches its limit likeliest in [A-Z][a-z]{2} 20");
  }
}

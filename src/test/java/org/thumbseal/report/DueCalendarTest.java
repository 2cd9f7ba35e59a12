package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;
import org.thumbseal.care.CaredFor;
import org.thumbseal.care.Deed;
import org.thumbseal.care.Due;
import org.thumbseal.care.Dues;
import org.thumbseal.care.Intervals;
import org.thumbseal.care.Work;

/** Read and validated by another library (RFC 5545), ical4j; the pumps are invented. */
class DueCalendarTest {
  private static final LocalDate TODAY = LocalDate.parse("2026-03-16");
  private static final Instant NOW = Instant.parse("2026-03-16T06:00:00Z");
  private static final CaredFor PUMP =
      new CaredFor(
          "SP-014",
          "mains, 2 L; with \"spare\" lid, see \\ shelf",
          "Ward 3, bed 2; behind the door of the long corridor that leads to the theatre — à gauche",
          new CaredFor.Terms(Optional.empty(), Intervals.DEFAULT));

  private static List<Due> dues(String tested) {
    Deed deed =
        new Deed("SP-014", Work.OCCLUSION_TEST, LocalDate.parse(tested), Deed.Outcome.IN_ORDER);
    return Dues.of(List.of(PUMP), List.of(deed), TODAY);
  }

  private static Calendar read(String text) throws Exception {
    Calendar calendar = new CalendarBuilder().build(new StringReader(text));
    assertThat(calendar.validate().hasErrors()).as(calendar.validate().toString()).isFalse();
    return calendar;
  }

  private static VEvent test(String tested) throws Exception {
    Calendar calendar = read(DueCalendar.of(dues(tested), TODAY, NOW));
    return calendar.getComponents("VEVENT").stream()
        .map(VEvent.class::cast)
        .filter(e -> e.getSummary().getValue().startsWith("Occlusion test"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void isReadByAnotherLibraryAsItWasMeant() throws Exception {
    VEvent event = test("2026-03-10");
    assertThat(event.getSummary().getValue()).isEqualTo("Occlusion test: SP-014");
    assertThat(event.getLocation().getValue()).isEqualTo(PUMP.location());
    assertThat(event.getDescription().getValue())
        .isEqualTo(PUMP.description() + " last on 2026-03-10");
    assertThat(event.getDateTimeStart().getDate()).isEqualTo(LocalDate.parse("2026-04-10"));
    assertThat(event.getDateTimeEnd().getDate()).isEqualTo(LocalDate.parse("2026-04-11"));
  }

  @Test
  void keepsToTheLinesOfTheStandard() {
    String text = DueCalendar.of(dues("2026-03-10"), TODAY, NOW);
    assertThat(text).startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n").endsWith("END:VCALENDAR\r\n");
    assertThat(text)
        .contains("DTSTART;VALUE=DATE:20260410\r\n")
        .contains("DTSTAMP:20260316T060000Z\r\n");
    assertThat(text.split("\r\n"))
        .allMatch(line -> line.getBytes(java.nio.charset.StandardCharsets.UTF_8).length <= 75);
  }

  @Test
  void anEntryKeepsItsNameWhenItsDayMoves() throws Exception {
    assertThat(test("2026-03-10").getUid()).isEqualTo(test("2026-03-16").getUid());
  }

  @Test
  void anEmptyCalendarIsOne() throws Exception {
    assertThat(DueCalendar.of(List.of(), TODAY, NOW)).startsWith("BEGIN:VCALENDAR");
  }
}

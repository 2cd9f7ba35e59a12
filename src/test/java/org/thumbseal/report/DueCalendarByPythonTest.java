package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.care.CaredFor;
import org.thumbseal.care.Due;
import org.thumbseal.care.Dues;
import org.thumbseal.care.Intervals;
import org.thumbseal.json.Json;
import tools.jackson.databind.JsonNode;

/**
 * The calendar as a reader of other hands takes it: the Python library icalendar (Debian package
 * python3-icalendar, made for 4.0.3), which shares no code with what writes the file. The rules are
 * those of RFC 5545; the pumps are invented.
 */
class DueCalendarByPythonTest {
  private static final String READ =
      """
      import sys, json, datetime, icalendar
      raw = open(sys.argv[1], 'rb').read()
      calendar = icalendar.Calendar.from_ical(raw)
      def one(event):
          start, end = event['DTSTART'], event['DTEND']
          return {
              'uid': str(event['UID']),
              'summary': str(event['SUMMARY']),
              'description': str(event['DESCRIPTION']),
              'location': str(event['LOCATION']) if 'LOCATION' in event else None,
              'stamp': event['DTSTAMP'].dt.isoformat(),
              'value': start.params.get('VALUE'),
              'whole': type(start.dt) is datetime.date and type(end.dt) is datetime.date,
              'days': (end.dt - start.dt).days,
              'start': start.dt.isoformat(),
              'errors': [list(e) for e in event.errors]}
      print(json.dumps({
          'version': str(calendar['VERSION']),
          'product': str(calendar['PRODID']),
          'errors': [list(e) for e in calendar.errors],
          'events': [one(e) for e in calendar.walk('VEVENT')]}))
      """;
  private static final LocalDate TODAY = LocalDate.parse("2026-03-16");
  private static final Instant NOW = Instant.parse("2026-03-16T06:00:00Z");

  /** Each has what the format must fold or escape; a place is shown in one line. */
  private static final List<CaredFor> PUMPS =
      List.of(
          pump("SP-001", "plain", "Ward 1"),
          pump("SP,002;x", "comma, semicolon; back\\slash \"quoted\"", "Ward 2; bed 1, left"),
          pump("SP-003", "first line\nsecond line\r\nthird", "Ward\n3"),
          pump("SP-004", "\u00e9".repeat(120), "\u092a\u0902\u092a ".repeat(30).strip()),
          pump("SP-005", "\uD83E\uDE79".repeat(60), "\u2014".repeat(70)),
          pump("SP-006", "BEGIN:VEVENT", "X:Y=\"Z\":,;"));

  @TempDir private Path folder;

  private static CaredFor pump(String id, String description, String location) {
    CaredFor.Terms terms = new CaredFor.Terms(Optional.empty(), Intervals.DEFAULT);
    return new CaredFor(id, description, location, terms);
  }

  private static String python() {
    return Files.exists(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3";
  }

  private static String run(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(out).isZero();
    return out;
  }

  @BeforeEach
  void thereIsSuchAReader() throws Exception {
    boolean here;
    try {
      Process process = new ProcessBuilder(python(), "-c", "import icalendar").start();
      here = process.waitFor() == 0;
    } catch (IOException e) {
      here = false;
    }
    assumeTrue(here, "skipped: no python3-icalendar here: the calendar is not read by that hand");
  }

  private static List<Due> dues(LocalDate today) {
    return Dues.of(PUMPS, List.of(), today);
  }

  private JsonNode read(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("due.ics"), text);
    JsonNode calendar = Json.mapper().readTree(run(python(), "-c", READ, file.toString()));
    assertThat(calendar.path("errors")).isEmpty();
    assertThat(calendar.path("events")).allMatch(event -> event.path("errors").isEmpty());
    return calendar;
  }

  private static List<String> each(JsonNode calendar, String member) {
    List<String> all = new ArrayList<>();
    calendar.path("events").forEach(event -> all.add(event.path(member).asString("")));
    return all;
  }

  @Test
  void everyTextComesBackAsItWasMeant() throws Exception {
    List<Due> dues = dues(TODAY);
    JsonNode calendar = read(DueCalendar.of(dues, TODAY, NOW));
    assertThat(calendar.path("version").asString()).isEqualTo("2.0");
    assertThat(calendar.path("product").asString()).isEqualTo(DueCalendar.PRODUCT);
    assertThat(dues).hasSizeGreaterThan(PUMPS.size());
    assertThat(each(calendar, "summary"))
        .containsExactlyElementsOf(
            dues.stream().map(d -> DueWords.work(d) + ": " + d.pump().id()).toList());
    assertThat(each(calendar, "location"))
        .containsExactlyElementsOf(dues.stream().map(d -> line(d.pump().location())).toList());
    assertThat(each(calendar, "description"))
        .containsExactlyElementsOf(
            dues.stream()
                .map(d -> d.pump().description() + " " + DueWords.why(d, TODAY))
                .map(text -> text.replace("\r\n", "\n"))
                .toList());
  }

  private static String line(String text) {
    return text.replace('\n', ' ');
  }

  @Test
  void anEntryIsAWholeDayAndStampedInUtc() throws Exception {
    List<Due> dues = dues(TODAY);
    JsonNode calendar = read(DueCalendar.of(dues, TODAY, NOW));
    for (JsonNode event : calendar.path("events")) {
      assertThat(event.path("value").asString()).isEqualTo("DATE");
      assertThat(event.path("whole").booleanValue()).isTrue();
      assertThat(event.path("days").intValue()).isEqualTo(1);
      assertThat(event.path("stamp").asString()).isEqualTo("2026-03-16T06:00:00+00:00");
    }
    assertThat(each(calendar, "start"))
        .containsExactlyElementsOf(dues.stream().map(d -> d.term().on().toString()).toList());
  }

  @Test
  void namesAreDifferentFromEachOtherAndTheSameNextTime() throws Exception {
    List<String> first = each(read(DueCalendar.of(dues(TODAY), TODAY, NOW)), "uid");
    LocalDate later = TODAY.plusDays(40);
    List<String> second =
        each(read(DueCalendar.of(dues(later), later, NOW.plusSeconds(3_456_000))), "uid");
    assertThat(first).doesNotHaveDuplicates().allMatch(uid -> uid.length() > 20);
    assertThat(new TreeSet<>(second)).isEqualTo(new TreeSet<>(first));
  }

  /**
   * RFC 5545, 3.3.11. A backslash before an n is not put to that reader: its version 4.0.3 takes
   * the two of it apart from behind and finds a line break.
   */
  @Test
  void aBackslashIsDoubledAndALineBreakIsNone() {
    List<CaredFor> odd = List.of(pump("SP-9", "a\\n,b;c\nd", "Ward"));
    String text = DueCalendar.of(Dues.of(odd, List.of(), TODAY), TODAY, NOW);
    assertThat(text.replace("\r\n ", ""))
        .contains("\r\nDESCRIPTION:a\\\\n\\,b\\;c\\nd no record of it\r\n");
  }

  /** RFC 5545, 3.1: at most 75 octets and then CR LF; a fold may not leave half a character. */
  @Test
  void linesAreFoldedAtSeventyFiveOctets() {
    String text = DueCalendar.of(dues(TODAY), TODAY, NOW);
    assertThat(text).endsWith("\r\n");
    List<String> lines = List.of(text.split("\r\n", -1));
    assertThat(lines).noneMatch(line -> line.contains("\n") || line.contains("\r"));
    assertThat(lines)
        .allSatisfy(
            line -> {
              assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThanOrEqualTo(75);
              assertThat(StandardCharsets.UTF_8.newEncoder().canEncode(line)).isTrue();
            });
    assertThat(lines).filteredOn(line -> line.startsWith(" ")).hasSizeGreaterThan(10);
  }
}

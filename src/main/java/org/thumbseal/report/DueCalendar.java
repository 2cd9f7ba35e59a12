package org.thumbseal.report;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Collectors;
import org.thumbseal.care.Due;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.Sha256;

/**
 * What is due as a calendar (RFC 5545), a whole day each. An entry keeps its UID as long as it is
 * about the same work on the same pump, so that a calendar which takes the file in again moves it.
 */
public final class DueCalendar {
  /** What the file says it was made by. */
  static final String PRODUCT = "-//Thumbseal//due//EN";

  private static final int ID_DIGITS = 32;
  private static final int LINE_OCTETS = 75;

  private DueCalendar() {}

  /**
   * The file.
   *
   * @param dues entries
   * @param today of which "overdue" is said
   * @param now when the file is made
   */
  public static String of(List<Due> dues, LocalDate today, Instant now) {
    ICalendar calendar = new ICalendar();
    calendar.setProductId(PRODUCT);
    dues.forEach(due -> calendar.addEvent(event(due, today, now)));
    return folded(Biweekly.write(calendar).go());
  }

  /** The library counts characters; the standard counts octets, 75 of them to a line. */
  private static String folded(String text) {
    return text.replace("\r\n ", "").lines().map(DueCalendar::fold).collect(Collectors.joining());
  }

  private static String fold(String line) {
    StringBuilder out = new StringBuilder();
    int octets = 0;
    for (int c : line.codePoints().toArray()) {
      String letter = Character.toString(c);
      int more = letter.getBytes(StandardCharsets.UTF_8).length;
      if (octets + more > LINE_OCTETS) {
        out.append("\r\n ");
        octets = 1;
      }
      out.append(letter);
      octets += more;
    }
    return out.append("\r\n").toString();
  }

  private static VEvent event(Due due, LocalDate today, Instant now) {
    VEvent event = new VEvent();
    event.setUid(uid(due));
    event.setDateTimeStamp(moment(now));
    event.setDateStart(day(due.term().on()), false);
    event.setDateEnd(day(due.term().on().plusDays(1)), false);
    event.setSummary(line(DueWords.work(due) + ": " + due.pump().id()));
    event.setDescription(
        lines((due.pump().description() + " " + DueWords.why(due, today)).strip(), "\n"));
    if (!due.pump().location().isEmpty()) {
      event.setLocation(line(due.pump().location()));
    }
    event.setTransparency(true);
    return event;
  }

  private static String line(String text) {
    return lines(text, " ");
  }

  /** A cell of a register may have several lines. */
  private static String lines(String text, String between) {
    return text.lines().map(Printable::line).collect(Collectors.joining(between));
  }

  /** The same for the same pump and work, whatever day it is due. */
  private static String uid(Due due) {
    String name = due.work().code() + "\n" + due.pump().id();
    String digest = Sha256.hex(name.getBytes(StandardCharsets.UTF_8));
    return digest.substring(0, ID_DIGITS) + "@thumbseal.invalid";
  }

  /** A day is written from its parts, in whatever zone this computer is. */
  private static ICalDate day(LocalDate date) {
    return new ICalDate(
        new DateTimeComponents(date.getYear(), date.getMonthValue(), date.getDayOfMonth()), false);
  }

  private static ICalDate moment(Instant instant) {
    OffsetDateTime utc = instant.atOffset(ZoneOffset.UTC);
    return new ICalDate(
        new DateTimeComponents(
            utc.getYear(),
            utc.getMonthValue(),
            utc.getDayOfMonth(),
            utc.getHour(),
            utc.getMinute(),
            utc.getSecond(),
            true),
        true);
  }
}

package org.thumbseal.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells a file that this program wrote about the same thing from one that somebody else did. */
public final class ReportFile {
  /** What of a file has to be looked at, bytes. */
  public static final int BEGINNING = 4_096;

  static final String SUBJECT = "thumbseal-subject";
  static final String DRAWING = "Thumbseal report of ";

  private static final Pattern MARK =
      Pattern.compile(
          "<meta name=\""
              + SUBJECT
              + "\" content=\"[^\"]*\">"
              + "|<desc>"
              + DRAWING
              + "[^<]*</desc>"
              + "|\\A"
              + SamplesCsv.NAMES_BEGIN
              + "[^\\r\\n]*"
              + "|"
              + DueCalendar.PRODUCT);

  private ReportFile() {}

  /**
   * Whether one file may take the place of the other.
   *
   * @param there how the file that is there begins
   * @param own how the new one does
   */
  public static boolean mayReplace(String there, String own) {
    Matcher old = MARK.matcher(there);
    Matcher now = MARK.matcher(own.substring(0, Math.min(BEGINNING, own.length())));
    return old.find() && now.find() && old.group().equals(now.group());
  }
}

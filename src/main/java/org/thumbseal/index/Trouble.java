package org.thumbseal.index;

import java.sql.SQLException;
import java.util.Locale;
import org.sqlite.SQLiteException;

/** What a base says, in one line with a remedy; nothing that a URL may have held is repeated. */
final class Trouble {
  private Trouble() {}

  static RecordsException of(RecordsAddress address, SQLException cause) {
    String place = address.shown() + ": ";
    if (cause instanceof SQLiteException sqlite) {
      return RecordsException.machine(place + sqlite(sqlite));
    }
    String state = String.valueOf(cause.getSQLState());
    boolean mistake = state.startsWith("28") || state.equals("3D000") || state.equals("3F000");
    String line = place + server(state, cause);
    return mistake ? RecordsException.mistake(line) : RecordsException.machine(line);
  }

  private static String sqlite(SQLiteException cause) {
    return switch (cause.getResultCode().name().replaceAll("^SQLITE_([A-Z]+).*", "$1")) {
      case "BUSY", "LOCKED", "PROTOCOL" ->
          "another program is writing there; try again when it is done";
      case "FULL" -> "the disk is full; make room, then run: thumbseal records add";
      case "READONLY", "PERM", "AUTH" ->
          "may not be written; let this user write there, or name another file with --records";
      case "CANTOPEN" -> "cannot be opened or made; is the folder there, and may it be written?";
      case "NOTADB", "CORRUPT", "FORMAT" ->
          "is damaged, or no base of records; move it away, and run: thumbseal records rebuild";
      case "IOERR" -> "the disk failed (" + cause.getResultCode().name() + ")";
      default -> "SQLite says: " + firstLine(cause);
    };
  }

  private static String server(String state, SQLException cause) {
    return switch (state) {
      case "28P01", "28000" ->
          "user or password is wrong; say ?user=NAME, and put the password into the file that"
              + " PGPASSFILE names";
      case "3D000" -> "there is no such base on that server; make it there with createdb";
      case "3F000" -> "there is no such schema in that base";
      case "42501" -> "this user may not write there; grant it, or name another base";
      case "42P07" -> "holds tables of another program under the same names; name another base";
      case "53100" -> "the disk of the server is full";
      case "53300" -> "the server has too many connections; try again";
      case "55P03", "57014" -> "another program is writing there; try again when it is done";
      case "57P01", "57P02", "57P03" -> "the server is starting or stopping; try again";
      default -> otherwise(state, cause);
    };
  }

  private static String otherwise(String state, SQLException cause) {
    if (state.startsWith("08") || state.equals("null")) {
      return "the server is not reached, or the connection broke; is it running, and is the address"
          + " right?";
    }
    return String.format(Locale.ROOT, "the server says: %s (%s)", firstLine(cause), state);
  }

  /** The drivers repeat an address that they cannot read, with the password that stands in it. */
  private static String firstLine(SQLException cause) {
    String line = String.valueOf(cause.getMessage()).lines().findFirst().orElse("");
    return line.contains("jdbc:") || line.contains("password=")
        ? "this address cannot be read"
        : line;
  }
}

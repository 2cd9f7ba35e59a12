package org.thumbseal.capture;

import java.util.Optional;
import org.thumbseal.capture.RecordCursor.TableRecord;
import org.thumbseal.quantity.PressureUnit;
import org.thumbseal.quantity.TimeScale;
import org.thumbseal.wire.PressureSense;

/**
 * Reads a table of time and pressure that another program wrote: comma, semicolon or tab between
 * the fields (RFC 4180 quoting), with or without a line of names, decimal point or comma.
 */
public final class TableReader {
  /** Largest table, bytes; a day at 10 Hz is two thirds of it. */
  public static final int LARGEST_BYTES = 32 << 20;

  /** Ambient pressure anywhere from sea level to 5000 m, with its weather, Pa. */
  private static final double LOWEST_AMBIENT = 50_000;

  private static final double HIGHEST_AMBIENT = 110_000;

  private final TableText text;
  private final TableLayout layout;
  private final Columns columns;

  private TableReader(TableText text, TableLayout layout, Columns columns) {
    this.text = text;
    this.layout = layout;
    this.columns = columns;
  }

  /**
   * Reads the bytes of a table.
   *
   * @throws CaptureFormatException if it is too large or no text, if a column is not there or its
   *     unit is not known, or if its rows cannot be used
   */
  public static Table read(byte[] bytes, Columns columns) throws CaptureFormatException {
    if (bytes.length > LARGEST_BYTES) {
      throw new CaptureFormatException(
          "the table is larger than " + (LARGEST_BYTES >> 20) + " MiB: cut it around the test");
    }
    TableText text = TableText.of(bytes);
    RecordCursor records = text.records();
    if (!records.advance()) {
      throw new CaptureFormatException("the table has no rows");
    }
    TableRecord first = records.current();
    return new TableReader(text, TableLayout.of(first, columns), columns).rows(first);
  }

  private Table rows(TableRecord first) throws CaptureFormatException {
    TimeScale scale = scale(first);
    PressureUnit unit = unit(first);
    NumberStyle timeStyle = new NumberStyle();
    NumberStyle pressureStyle = new NumberStyle();
    for (RecordCursor rows = body(); rows.advance(); ) {
      timeStyle.observe(rows.current().cell(layout.time()));
      pressureStyle.observe(rows.current().cell(layout.pressure()));
    }
    TimeCells times = new TimeCells(scale, timeStyle);
    PressureSense sense = columns.pressure().sense().orElse(PressureSense.GAUGE);
    PressureCells pressures = new PressureCells(unit, sense, pressureStyle);
    RowCollector collector = new RowCollector(layout, times, pressures);
    for (RecordCursor rows = body(); rows.advance(); ) {
      collector.accept(rows.current());
    }
    return withSenseKnown(collector.table());
  }

  /** Gauge pressure with the inlet open is about nothing; this would be a whole atmosphere. */
  private Table withSenseKnown(Table table) throws CaptureFormatException {
    double first = table.samples().get(0).pascals();
    boolean ambient = first > LOWEST_AMBIENT && first < HIGHEST_AMBIENT;
    if (columns.pressure().sense().isEmpty() && ambient) {
      throw new CaptureFormatException(
          "the pressures begin near ambient pressure ("
              + Math.round(first / 1_000)
              + " kPa): say whether column '"
              + columns.pressure().name()
              + "' is :absolute, :gauge or :vacuum");
    }
    return table;
  }

  private RecordCursor body() throws CaptureFormatException {
    RecordCursor rows = text.records();
    if (layout.head()) {
      rows.advance();
    }
    return rows;
  }

  private TimeScale scale(TableRecord first) throws CaptureFormatException {
    String name = layout.head() ? first.cell(layout.time()) : "";
    Optional<TimeScale> known =
        columns.time().scale().or(() -> UnitInName.find(name, TimeScale::ofSymbol));
    if (known.isPresent()) {
      return known.get();
    }
    RecordCursor rows = body();
    if (rows.advance() && TimeScale.isoTime(rows.current().cell(layout.time())).isPresent()) {
      return TimeScale.ISO_8601;
    }
    throw unknownUnit("time", columns.time().name(), TimeScale.SYMBOLS);
  }

  private PressureUnit unit(TableRecord first) throws CaptureFormatException {
    String name = layout.head() ? first.cell(layout.pressure()) : "";
    Optional<PressureUnit> known =
        columns.pressure().unit().or(() -> UnitInName.find(name, PressureUnit::ofSymbol));
    if (known.isEmpty()) {
      throw unknownUnit("pressure", columns.pressure().name(), Columns.symbols());
    }
    return known.get();
  }

  private static CaptureFormatException unknownUnit(String key, String name, String symbols) {
    return new CaptureFormatException(
        "the unit of column '"
            + name
            + "' is not known: write "
            + key
            + "="
            + name
            + ":<unit>, one of "
            + symbols);
  }
}

package org.thumbseal.index;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A connection, the statements prepared on it, and its transactions. For one thread at a time. */
final class Session implements AutoCloseable {
  private static final int MOST_TRIES = 10;
  private static final String SERIALIZATION_FAILURE = "40001";
  private static final String DEADLOCK = "40P01";

  private final Connection connection;
  private final Dialect dialect;
  private final Map<String, PreparedStatement> prepared = new HashMap<>();
  private final Map<String, PreparedStatement> waiting = new LinkedHashMap<>();
  private boolean inside;

  Session(Connection connection, Dialect dialect) {
    this.connection = connection;
    this.dialect = dialect;
  }

  Dialect dialect() {
    return dialect;
  }

  /** Makes something of a row. */
  @FunctionalInterface
  interface RowReader<T> {
    T read(ResultSet row) throws SQLException;
  }

  /** What is done within a transaction. */
  @FunctionalInterface
  interface Work<T> {
    T run() throws SQLException, RecordsException;
  }

  /** Changes rows at once; gives how many. */
  int run(String sql, Object... values) throws SQLException {
    PreparedStatement statement = prepare(sql);
    bind(statement, values);
    return statement.executeUpdate();
  }

  /** Does what takes no values and is done once. */
  void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Writes a row with others of its kind, at the next {@link #flush}. */
  void add(String sql, Object... values) throws SQLException {
    PreparedStatement statement = prepare(sql);
    bind(statement, values);
    statement.addBatch();
    waiting.put(sql, statement);
  }

  void flush() throws SQLException {
    for (PreparedStatement statement : waiting.values()) {
      statement.executeBatch();
    }
    waiting.clear();
  }

  <T> List<T> list(String sql, RowReader<T> reader, Object... values) throws SQLException {
    PreparedStatement statement = prepare(sql);
    bind(statement, values);
    List<T> found = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        found.add(reader.read(rows));
      }
    }
    return found;
  }

  long count(String sql, Object... values) throws SQLException {
    return list(sql, row -> row.getLong(1), values).get(0);
  }

  /**
   * Does the work as one step, alone among those who write; again where the base asks for it.
   * Within another work it is part of that.
   */
  <T> T write(Work<T> work) throws SQLException, RecordsException {
    for (int attempt = 1; ; attempt++) {
      try {
        return within(dialect.beginWriting(), work);
      } catch (SQLException e) {
        if (inside || attempt >= MOST_TRIES || !isWorthAnotherTry(e)) {
          throw e;
        }
      }
    }
  }

  /** Does the work on one state of the base, whatever others write meanwhile. */
  <T> T read(Work<T> work) throws SQLException, RecordsException {
    return within(List.of(dialect.beginReading()), work);
  }

  private <T> T within(List<String> begin, Work<T> work) throws SQLException, RecordsException {
    if (inside) {
      return work.run();
    }
    boolean done = false;
    inside = true;
    try {
      for (String sql : begin) {
        execute(sql);
      }
      T result = work.run();
      flush();
      execute("COMMIT");
      done = true;
      return result;
    } finally {
      inside = false;
      if (!done) {
        rollBack();
      }
    }
  }

  private void rollBack() {
    try {
      for (PreparedStatement statement : waiting.values()) {
        statement.clearBatch();
      }
      waiting.clear();
      execute("ROLLBACK");
    } catch (SQLException e) {
      // The base undoes it by itself when the connection is gone; what failed first is told.
    }
  }

  private static boolean isWorthAnotherTry(SQLException e) {
    String state = String.valueOf(e.getSQLState());
    return state.equals(SERIALIZATION_FAILURE) || state.equals(DEADLOCK);
  }

  private PreparedStatement prepare(String sql) throws SQLException {
    PreparedStatement known = prepared.get(sql);
    if (known == null) {
      known = connection.prepareStatement(sql);
      prepared.put(sql, known);
    }
    return known;
  }

  private static void bind(PreparedStatement statement, Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      Object value = values[i] instanceof Optional<?> may ? may.orElse(null) : values[i];
      if (value == null) {
        statement.setNull(i + 1, Types.NULL);
      } else {
        statement.setObject(i + 1, value);
      }
    }
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}

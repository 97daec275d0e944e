package thinclick.server.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** Columns that may be null, read as what they are. */
final class Columns {
  private Columns() {}

  static @Nullable Long longOrNull(ResultSet row, String column) throws SQLException {
    long value = row.getLong(column);
    return row.wasNull() ? null : (Long) value;
  }

  static @Nullable Integer intOrNull(ResultSet row, String column) throws SQLException {
    int value = row.getInt(column);
    return row.wasNull() ? null : (Integer) value;
  }

  static @Nullable Double doubleOrNull(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? null : (Double) value;
  }
}

package thinclick.server.load;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Looks into a host's database from outside, while it runs or afterwards. */
final class Ledger {
  private Ledger() {}

  /** How many of the numbers from 1 on are stored, up to a number, of one player in one take. */
  static long storedUpTo(Path database, String takeId, String playerId, long seq) {
    return query(
            database,
            """
            SELECT count(*) FROM attack a JOIN take t ON t.number = a.take
            JOIN take_player p ON p.take = a.take AND p.player = a.player
            WHERE t.id = ? AND p.id = ? AND a.seq BETWEEN 1 AND ?
            """,
            takeId,
            playerId,
            seq)
        .get(0);
  }

  /** The instants as they are stored, by number. */
  static List<Long> micros(Path database, String takeId, String playerId) {
    return query(
        database,
        """
        SELECT a.micros FROM attack a JOIN take t ON t.number = a.take
        JOIN take_player p ON p.take = a.take AND p.player = a.player
        WHERE t.id = ? AND p.id = ? ORDER BY a.seq
        """,
        takeId,
        playerId);
  }

  static boolean whole(Path database) {
    try (Connection connection = open(database);
        Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery("PRAGMA integrity_check")) {
      return answer.next() && answer.getString(1).equals("ok");
    } catch (SQLException problem) {
      throw new AssertionError(problem);
    }
  }

  private static List<Long> query(Path database, String sql, Object... values) {
    try (Connection connection = open(database);
        PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      List<Long> answers = new ArrayList<>();
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          answers.add(rows.getLong(1));
        }
      }
      return answers;
    } catch (SQLException problem) {
      throw new AssertionError(problem);
    }
  }

  private static Connection open(Path database) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + database + "?busy_timeout=20000");
  }
}

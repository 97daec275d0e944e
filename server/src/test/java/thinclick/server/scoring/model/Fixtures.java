package thinclick.server.scoring.model;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Reads the series of numbers that tests compare with. */
final class Fixtures {
  private Fixtures() {}

  /** One column of a CSV file with a header, from 0. */
  static double[] column(String file, int column) {
    try (InputStream in = Fixtures.class.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .mapToDouble(line -> Double.parseDouble(line.split(",")[column]))
          .toArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

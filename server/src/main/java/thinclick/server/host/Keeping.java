package thinclick.server.host;

import java.time.InstantSource;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.json.Check;

/**
 * How long a host keeps takes.
 *
 * @param wallClock by which the months pass
 * @param months for whatever belongs to no class that says otherwise; 0 for ever
 */
public record Keeping(InstantSource wallClock, int months) {
  /** What holds unless somebody says otherwise. */
  public static final int USUAL_MONTHS = 12;

  /** A year, by the computer's clock. */
  public static final Keeping USUAL = new Keeping(InstantSource.system(), USUAL_MONTHS);

  public Keeping {
    Check.range("--keep-months", months, 0L, SeasonFile.MOST_MONTHS);
  }
}

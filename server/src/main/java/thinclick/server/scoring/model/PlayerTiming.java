package thinclick.server.scoring.model;

import java.util.List;

/**
 * What the model says of one player.
 *
 * @param player the player's name
 * @param timekeeperMillis SD of the timekeeper for one beat
 * @param motorMillis SD of one attack's execution
 * @param clickGain the fraction of the distance to the click that the player closes at each click
 * @param tendencyMillis the player's own tendency, ms a beat, positive slowing, with nobody pulling
 * @param forecasts what thinner clicks would do, in the order asked
 */
public record PlayerTiming(
    String player,
    Estimate timekeeperMillis,
    Estimate motorMillis,
    Estimate clickGain,
    Estimate tendencyMillis,
    List<Forecast> forecasts) {
  public PlayerTiming {
    forecasts = List.copyOf(forecasts);
  }
}

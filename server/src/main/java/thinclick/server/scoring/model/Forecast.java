package thinclick.server.scoring.model;

/**
 * What a thinner click would do to one player.
 *
 * @param plan the plan's plain name
 * @param spreadMillis the spread to expect in the stage, with the interval that a single playing of
 *     it would fall into; unknown for silence
 * @param returnMillis how far off (root mean square) the player would be when the click returns
 *     after silence; unknown for plans that go on clicking
 */
public record Forecast(String plan, Estimate spreadMillis, Estimate returnMillis) {}

package thinclick.server.words;

import org.jspecify.annotations.Nullable;

/**
 * One thing that a review has to say.
 *
 * @param rule the name of the rule that found it
 * @param matter what it is about; findings are said in this order
 * @param player whom it is about; null for the band
 * @param size how much of it there was, among findings of one matter; the largest is said first
 * @param says the sentence
 * @param next what to do about it; null where nothing
 * @param slipOnly true where only the player's own slip says it
 */
public record Finding(
    String rule,
    Matter matter,
    @Nullable String player,
    double size,
    Said says,
    @Nullable Advice next,
    boolean slipOnly) {

  Finding(
      String rule,
      Matter matter,
      @Nullable String player,
      double size,
      Said says,
      @Nullable Advice next) {
    this(rule, matter, player, size, says, next, false);
  }

  static Finding ofBand(String rule, Matter matter, double size, Said says, @Nullable Advice next) {
    return new Finding(rule, matter, null, size, says, next);
  }

  /** The same, for the player's own slip alone. */
  Finding quiet() {
    return new Finding(rule, matter, player, size, says, next, true);
  }
}

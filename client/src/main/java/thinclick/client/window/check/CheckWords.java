package thinclick.client.window.check;

import thinclick.client.check.Verdict;
import thinclick.client.check.Verdict.How;
import thinclick.client.check.Verdict.Known;
import thinclick.client.check.Verdict.Refused;
import thinclick.client.window.words.Words;

/** A verdict in words, with what it cannot tell. */
final class CheckWords {
  private CheckWords() {}

  static String say(Words words, Verdict verdict) {
    if (verdict instanceof Known known) {
      String key = known.how() == How.MICROPHONE ? "check.known.microphone" : "check.known.taps";
      return words.say(
          key,
          words.whole(Math.round(known.latencyMillis())),
          Math.max(1, Math.round(known.uncertaintyMillis())),
          known.taps());
    }
    Refused refused = (Refused) verdict;
    return words.say(key(refused.why()), refused.usable()) + " " + words.say("check.refused");
  }

  private static String key(Verdict.Why why) {
    return switch (why) {
      case FEW -> "check.few";
      case SCATTERED -> "check.scattered";
      case OUTLIERS -> "check.outliers";
      case HALVES -> "check.halves";
      case STUMBLED -> "check.stumbled";
      case BEYOND -> "check.beyond";
      case CLICK_UNHEARD -> "check.click.unheard";
      case TAPS_UNHEARD -> "check.taps.unheard";
    };
  }
}

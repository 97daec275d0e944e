package thinclick.client.window.words;

import thinclick.client.window.session.PastTakes;

/** Why nothing is said of takes before. */
public final class PastWords {
  private PastWords() {}

  /** The key of the sentence for it. */
  public static String notTold(PastTakes.State state) {
    return switch (state) {
      case ASKED -> "lectern.fewest.looking";
      case OLDER_HOST -> "lectern.fewest.olderHost";
      case TOLD, NOT_NOW -> "lectern.fewest.notNow";
    };
  }
}

package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What is said of a player, said to that player: a slip says "You dropped 3 of 32", not "Ana
 * dropped 3 of 32", and a stand "Come in on beat 2 of bar 1". Two who swapped their parts are named
 * on both slips, since the sentence is of both.
 */
public final class ToOneself {
  private static final Map<String, String> KEYS =
      Map.ofEntries(
          Map.entry("deal.nothing", "you.nothing"),
          Map.entry("deal.enters", "you.enters"),
          Map.entry("place.otherPart", "you.otherPart"),
          Map.entry("place.displaced", "you.displaced"),
          Map.entry("place.displacedHome", "you.displacedHome"),
          Map.entry("place.displacedOften", "you.displacedOften"),
          Map.entry("edges.lateEntry", "you.lateEntry"),
          Map.entry("edges.lostEnding", "you.lostEnding"),
          Map.entry("edges.notHeard", "you.notHeard"),
          Map.entry("free.home", "you.home"),
          Map.entry("free.homeAndHeld", "you.homeAndHeld"),
          Map.entry("free.notBack", "you.notBack"),
          Map.entry("free.shifted", "you.shifted"),
          Map.entry("free.off", "you.off"),
          Map.entry("answer.back", "you.gaveBack"),
          Map.entry("answer.backAndMore", "you.gaveBackAndMore"),
          Map.entry("notes.dropped", "you.dropped"),
          Map.entry("notes.added", "you.added"),
          Map.entry("notes.faint", "you.faint"),
          Map.entry("notes.allFaint", "you.allFaint"),
          Map.entry("lean.upbeats", "you.upbeats"),
          Map.entry("lean.steady", "you.steady"),
          Map.entry("lean.alone", "you.alone"),
          Map.entry("lean.noVerdict", "you.noVerdict"),
          Map.entry("feel.kept", "you.kept"),
          Map.entry("feel.keptOnbeat", "you.keptOnbeat"),
          Map.entry("feel.keptOffbeat", "you.keptOffbeat"),
          Map.entry("spread.wide", "you.uneven"),
          Map.entry("follow.takesUp", "you.takeUp"),
          Map.entry("forecast.holds", "you.wouldHold"),
          Map.entry("forecast.open", "you.mayHold"),
          Map.entry("forecast.tooThin", "you.wouldNotHold"),
          Map.entry("forecast.silence", "you.afterSilence"),
          Map.entry("caveat.away", "you.away"),
          Map.entry("caveat.awayOneBar", "you.awayOneBar"),
          Map.entry("caveat.unsure", "you.unsure"),
          Map.entry("caveat.doubled", "you.doubled"),
          Map.entry("caveat.cannotTell", "you.cannotTell"));

  private ToOneself() {}

  /**
   * The sentence as it is said to the player whom it is about, who is its first value; where it is
   * made of phrases, the first value of the first of them.
   */
  public static Said of(Said said) {
    if (said.key().equals("sentence") && said.values().get(0) instanceof Said.Row phrases) {
      return of(said, phrases);
    }
    String key = KEYS.get(said.key());
    return key == null ? said : new Said(key, said.values().subList(1, said.values().size()));
  }

  private static Said of(Said sentence, Said.Row phrases) {
    List<Object> said = new ArrayList<>(phrases.values());
    if (!said.isEmpty() && said.get(0) instanceof Said first) {
      said.set(0, of(first));
    }
    return Said.of(sentence.key(), new Said.Row(said, phrases.and()));
  }
}

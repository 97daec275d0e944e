package thinclick.client.input;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What of one computer's inputs belongs to which of its chairs, from 0. Of the letters each chair
 * has columns of its own, with a free one between hands where there is room; letters that lie
 * elsewhere on QWERTZ and AZERTY keyboards are nobody's as soon as more than two play. A MIDI
 * channel is that of the chair of its number, and the first chair's where there is none; a pad that
 * was shown to be somebody's stays theirs, also while they do not sit here.
 */
public final class Shares {
  /** So many chairs have keys of their own. */
  public static final int MOST = 4;

  private static final List<List<String>> LETTERS =
      List.of(
          List.of("QWERTASDFGZXCVB", "YUIOPHJKLNM"),
          List.of("QWASX", "TGBHN", "IKOLP"),
          List.of("QWASX", "RFV", "UJN", "OLP"));

  private final Map<Source, String> shown = new HashMap<>();
  private KeyHalf half = KeyHalf.ALL;
  private List<String> chairs = List.of("");

  private record Source(String input, int channel) {}

  /** The letters of the only chair. */
  public void half(KeyHalf only) {
    half = only;
  }

  /** Who sits here, 1 to {@link #MOST}, by names that differ. */
  public void chairs(List<String> players) {
    if (players.isEmpty() || players.size() > MOST) {
      throw new IllegalArgumentException("chairs " + players.size() + " are not 1 to " + MOST);
    }
    chairs = List.copyOf(players);
  }

  /**
   * A MIDI input, on this channel, is this player's from now on, and anew whenever they sit here.
   *
   * @param channel 0-15
   */
  public void show(String input, int channel, String player) {
    shown.put(new Source(input, channel), player);
  }

  /** The letters of a chair where several sit here. */
  public String letters(int chair) {
    return LETTERS.get(chairs.size() - 2).get(chair);
  }

  /** Whose a letter is, A to Z; -1 for nobody's. */
  public int ofKey(char letter) {
    if (chairs.size() == 1) {
      return half.has(letter) ? 0 : -1;
    }
    for (int chair = 0; chair < chairs.size(); chair++) {
      if (letters(chair).indexOf(letter) >= 0) {
        return chair;
      }
    }
    return -1;
  }

  /** Whose a note is, by its input and its channel, 0-15. */
  public int ofNote(String input, int channel) {
    String whose = shown.get(new Source(input, channel));
    int chair = whose == null ? -1 : chairs.indexOf(whose);
    if (chair >= 0) {
      return chair;
    }
    return channel < chairs.size() ? channel : 0;
  }
}

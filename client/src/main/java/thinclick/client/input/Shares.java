package thinclick.client.input;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What of one computer's inputs belongs to which of its chairs, from 0. Of the letters each chair
 * has columns of its own, with a free one between hands where there is room; letters that lie
 * elsewhere on QWERTZ and AZERTY keyboards are nobody's as soon as more than two play. A MIDI
 * channel is that of the chair of its number, and the first chair's where there is none; a pad that
 * was shown to be somebody's stays theirs.
 */
public final class Shares {
  /** So many chairs have keys of their own. */
  public static final int MOST = 4;

  private static final List<List<String>> LETTERS =
      List.of(
          List.of("QWERTASDFGZXCVB", "YUIOPHJKLNM"),
          List.of("QWASX", "TGBHN", "IKOLP"),
          List.of("QWASX", "RFV", "UJN", "OLP"));

  private final Map<Source, Integer> shown = new HashMap<>();
  private KeyHalf half = KeyHalf.ALL;
  private int chairs = 1;

  private record Source(String input, int channel) {}

  /** The letters of the only chair. */
  public void half(KeyHalf only) {
    half = only;
  }

  /** So many sit here, 1 to {@link #MOST}. */
  public void chairs(int count) {
    if (count < 1 || count > MOST) {
      throw new IllegalArgumentException("chairs " + count + " are not 1 to " + MOST);
    }
    chairs = count;
    shown.values().removeIf(chair -> chair >= count);
  }

  /** A MIDI input, on this channel, is this chair's from now on. */
  public void show(String input, int channel, int chair) {
    shown.put(new Source(input, channel), chair);
  }

  /** A chair goes; those after it move up. */
  public void gone(int chair) {
    shown.values().removeIf(one -> one == chair);
    shown.replaceAll((source, one) -> one > chair ? one - 1 : one);
    chairs(chairs - 1);
  }

  /** The letters of a chair where several sit here. */
  public String letters(int chair) {
    return LETTERS.get(chairs - 2).get(chair);
  }

  /** Whose a letter is, A to Z; -1 for nobody's. */
  public int ofKey(char letter) {
    if (chairs == 1) {
      return half.has(letter) ? 0 : -1;
    }
    for (int chair = 0; chair < chairs; chair++) {
      if (letters(chair).indexOf(letter) >= 0) {
        return chair;
      }
    }
    return -1;
  }

  /** Whose a note is, by its input and its channel, 0-15. */
  public int ofNote(String input, int channel) {
    Integer whose = shown.get(new Source(input, channel));
    if (whose != null) {
      return whose;
    }
    return channel < chairs ? channel : 0;
  }
}

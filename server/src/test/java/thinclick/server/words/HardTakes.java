package thinclick.server.words;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;

/**
 * Ten takes made to be hard: eight-bar stages of 4/4 in eighths at 120, on all beats, on one and
 * three, and in silence, unless said otherwise; four players of a band room with spreads of 6 to 12
 * ms.
 */
public final class HardTakes {
  private HardTakes() {}

  public static final Map<String, Supplier<Take>> ALL = new LinkedHashMap<>();

  static {
    ALL.put("turned around and home again", HardTakes::turnedAround);
    ALL.put("all drag together", HardTakes::allDrag);
    ALL.put("two swap parts", HardTakes::swapped);
    ALL.put("one plays the other's part", HardTakes::otherPart);
    ALL.put("laid back on purpose", HardTakes::laidBack);
    ALL.put("rushes in silence", HardTakes::rushes);
    ALL.put("dropped ending", HardTakes::droppedEnding);
    ALL.put("late first entry", HardTakes::lateEntry);
    ALL.put("noisy pad", HardTakes::noisyPad);
    ALL.put("away for four bars", HardTakes::away);
  }

  private static Band band(String title, long seed) {
    return new Band(
        title,
        120,
        seed,
        Stage.ofBeats(8, 1, 1, 2, 3, 4),
        Stage.ofBeats(8, 1, 1, 3),
        Stage.ofBeats(8, 1));
  }

  private static Band.Player mina(Band band) {
    return band.player("Mina", 0, 2, 4, 6).spread(7);
  }

  private static Band.Player jonas(Band band) {
    return band.player("Jonas", 0, 3, 4, 7).spread(9);
  }

  private static Band.Player ilse(Band band) {
    return band.player("Ilse", 1, 3, 5, 7).spread(11);
  }

  private static Band.Player tariq(Band band) {
    return band.player("Tariq", 3, 6, 7).spread(10);
  }

  /** Ilse, who has the ands, sits on the beats from bar 10 to bar 13 and finds home at bar 14. */
  public static Take turnedAround() {
    Band band = band("Turned around", 1);
    mina(band).plays();
    jonas(band).plays();
    ilse(band).shifted(1, 9, 13).plays();
    return tariq(band).plays().take();
  }

  /** In the silent bars all slow down by 1 percent, and nobody leaves the others. */
  public static Take allDrag() {
    Band band =
        new Band(
                "All drag",
                120,
                2,
                Stage.ofBeats(8, 1, 1, 2, 3, 4),
                Stage.ofBeats(8, 1),
                Stage.ofBeats(4, 1, 1))
            .drifts(
                step ->
                    step < 64
                        ? 0
                        : step < 128
                            ? (step - 64) * 2.5
                            : Math.max(0, 160 * (1 - (step - 128) / 6)));
    mina(band).plays();
    jonas(band).plays();
    ilse(band).plays();
    return tariq(band).plays().take();
  }

  /** Jonas plays Tariq's part and Tariq plays Jonas's, from the first bar to the last. */
  public static Take swapped() {
    Band band = band("Swapped", 3);
    mina(band).plays();
    jonas(band).playsInstead(band.over(8, List.of(3, 6, 7))).plays();
    ilse(band).plays();
    return tariq(band).playsInstead(band.over(8, List.of(0, 3, 4, 7))).plays().take();
  }

  /** Tariq plays what is written for Mina; Mina plays it as well. */
  public static Take otherPart() {
    Band band = band("Other part", 4);
    mina(band).plays();
    jonas(band).plays();
    ilse(band).plays();
    return tariq(band).playsInstead(band.over(8, List.of(0, 2, 4, 6))).plays().take();
  }

  /** Ilse is asked to lay back by 25 ms and does, by 23 to 27. */
  public static Take laidBack() {
    Band band = band("Laid back", 5);
    mina(band).plays();
    jonas(band).plays();
    band.player(Band.withFeel(Part.of("Ilse", 0, band.over(8, List.of(1, 3, 5, 7))), 25, 25))
        .spread(9)
        .leans(24)
        .plays();
    return tariq(band).plays().take();
  }

  /** As soon as the click is gone everybody speeds up, by 2 percent, until the take ends. */
  public static Take rushes() {
    Band band = band("Rushes", 6).drifts(step -> step < 128 ? 0 : -5.0 * (step - 128));
    mina(band).plays();
    jonas(band).plays();
    ilse(band).plays();
    return tariq(band).plays().take();
  }

  /** Jonas stops playing three bars before the end. */
  public static Take droppedEnding() {
    Band band = band("Dropped ending", 7);
    mina(band).plays();
    jonas(band).drops(step -> step >= 8 * 21).plays();
    ilse(band).plays();
    return tariq(band).plays().take();
  }

  /** Tariq comes in two bars late, in his right place. */
  public static Take lateEntry() {
    Band band = band("Late entry", 8);
    mina(band).plays();
    jonas(band).plays();
    ilse(band).plays();
    return tariq(band).drops(step -> step < 16).plays().take();
  }

  /** Mina's pad sends a faint second attack 15 ms after every third one, and ghosts between. */
  public static Take noisyPad() {
    Band band = band("Noisy pad", 9);
    Band.Player mina = mina(band);
    jonas(band).plays();
    ilse(band).plays();
    tariq(band).plays();
    for (int step = 0; step < 192; step += 6) {
      mina.adds(step + .08, 12);
    }
    for (int step = 5; step < 192; step += 16) {
      mina.adds(step, 7);
    }
    return mina.plays().take();
  }

  /** Ilse's computer sleeps through bars 9 to 12. */
  public static Take away() {
    Band band = band("Away", 10);
    mina(band).plays();
    jonas(band).plays();
    band.player(band.away(Part.of("Ilse", 0, band.over(8, List.of(1, 3, 5, 7))), 8, 12))
        .spread(11)
        .drops(step -> step >= 64 && step < 96)
        .plays();
    return tariq(band).plays().take();
  }

  /** Eight bars of four players, one of them on a noisy pad: for tests that need any take. */
  public static Take small() {
    Band band =
        new Band("Noisy pad", 120, 11, Stage.ofBeats(4, 1, 1, 2, 3, 4), Stage.ofBeats(4, 1));
    Band.Player mina = mina(band);
    jonas(band).plays();
    ilse(band).plays();
    tariq(band).plays();
    for (int step = 0; step < 64; step += 6) {
      mina.adds(step + .08, 12);
    }
    return mina.plays().take();
  }
}

package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import thinclick.client.sound.CueSheet.Cue;
import thinclick.client.sound.RoomTimes;
import thinclick.client.sound.Voice;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.scoring.Scorer;

/**
 * A take listened to again: every own attack, and the click or the pulse, at the right instants.
 */
class ListeningTest {
  private final Take take =
      new Take(
          Take.FORMAT,
          Take.VERSION,
          "Beats",
          Meter.FOUR_FOUR,
          120,
          2,
          Swing.STRAIGHT,
          5_000_000,
          50.0,
          List.of(Stage.ofBeats(4, 1, 1, 3)),
          List.of(part("Ana"), part("Ben")),
          attacks(),
          null,
          List.of());

  @Test
  void ownAttacksStandBesideEveryClickAndNobodyElses() {
    List<Cue> cues = Listening.againstClick(Scorer.analyse(take), "Ana").cues();
    assertThat(cues.stream().filter(cue -> cue.sound() == Voice.WOOD).map(Cue::micros))
        .hasSize(16)
        .startsWith(5_010_000L, 5_510_000L);
    assertThat(cues.stream().filter(cue -> cue.sound() != Voice.WOOD).map(Cue::micros))
        .containsExactly(
            5_000_000L,
            6_000_000L,
            7_000_000L,
            8_000_000L,
            9_000_000L,
            10_000_000L,
            11_000_000L,
            12_000_000L);
    assertThat(cues)
        .isSortedAccordingTo((one, other) -> Long.compare(one.micros(), other.micros()));
  }

  @Test
  void aTakeThatWasStoppedIsListenedToAsFarAsItWent() {
    Take stopped = take.edited().endMicros(8_200_000L).take();
    assertThat(Listening.againstClick(Scorer.analyse(stopped), "Ana").cues())
        .filteredOn(cue -> cue.sound() != Voice.WOOD)
        .extracting(Cue::micros)
        .containsExactly(5_000_000L, 6_000_000L, 7_000_000L, 8_000_000L);
  }

  @Test
  void thePulseLiesBetweenTheTwoOfThem() {
    List<Cue> cues = Listening.againstPulse(Scorer.analyse(take), "Ana").cues();
    List<Long> pulse =
        cues.stream().filter(cue -> cue.sound() != Voice.WOOD).map(Cue::micros).toList();
    assertThat(pulse).hasSize(16);
    for (int beat = 2; beat < 14; beat++) {
      // Ana is 10 ms late and Ben 20: their pulse is 15 ms after the grid.
      assertThat(pulse.get(beat))
          .isBetween(5_012_000L + beat * 500_000L, 5_018_000L + beat * 500_000L);
    }
  }

  @Test
  void itBeginsAMomentAfterItIsAskedForAndRunsAsItRan() {
    RoomTimes times = Listening.from(take, 1_000_000_000L);
    assertThat(times.nanosOf(5_000_000)).isEqualTo(1_600_000_000L);
    assertThat(times.nanosOf(6_000_000) - times.nanosOf(5_000_000)).isEqualTo(1_000_000_000L);
    assertThat(times.roomMicros(times.nanosOf(7_123_456))).isEqualTo(7_123_456);
  }

  private static Part part(String name) {
    return Part.of(name, 0, IntStream.range(0, 16).map(i -> 2 * i).boxed().toList());
  }

  private static List<Attack> attacks() {
    return IntStream.range(0, 16)
        .boxed()
        .flatMap(
            beat ->
                Stream.of(
                    Attack.tap("Ana", 5_010_000L + beat * 500_000L),
                    Attack.tap("Ben", 5_020_000L + beat * 500_000L)))
        .toList();
  }
}

package thinclick.client.partner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/** A duo over a line: what is heard of Ben at Ana's, by the arrival of attacks in room time. */
class InTimeTest {
  private static final int BARS = 16;
  private static final long LINE = 60_000;
  private static final long AHEAD = 250_000;
  private static final Take TAKE =
      new Take(
          Take.FORMAT,
          Take.VERSION,
          "Duo",
          Meter.FOUR_FOUR,
          120.0,
          2,
          Swing.STRAIGHT,
          5_000_000,
          50.0,
          List.of(Stage.ofBeats(BARS, 1, 1, 2, 3, 4)),
          List.of(Part.of("Ana", 0, every(0, 4)), Part.of("Ben", 0, every(2, 4))),
          List.of(),
          null,
          List.of());
  private static final StepGrid GRID = TAKE.grid();

  private final InTime inTime = new InTime(TAKE, "Ana");
  private final List<Long> sounded = new ArrayList<>();

  @Test
  void theWrittenPartSoundsOnceWhereThePartnerPlaysIt() {
    play(step -> 8_000L, step -> true);
    assertThat(sounded).hasSize(every(2, 4).size());
    for (int i = 4; i < sounded.size(); i++) {
      assertThat((double) sounded.get(i))
          .as("on the shared pulse, not late by the line")
          .isCloseTo(GRID.microsAt(2 + 4 * i) + 8_000, within(4_000.0));
    }
    assertThat(inTime.follows("Ben")).isTrue();
  }

  /** Three notes a time: two that belong to the first are no attacks off the part. */
  @Test
  void aPartnerWhoPlaysChordsIsHeardOnceATime() {
    for (int step : every(2, 4)) {
      long at = GRID.instantOf(step);
      inTime.due(at, at + AHEAD).forEach(note -> sounded.add(note.micros()));
      boolean first = inTime.arrived("Ben", at);
      assertThat(inTime.arrived("Ben", at + 8_000)).isFalse();
      assertThat(inTime.arrived("Ben", at + 15_000)).isFalse();
      if (first) {
        sounded.add(at);
      }
    }
    assertThat(inTime.follows("Ben")).isTrue();
    assertThat(sounded).hasSize(every(2, 4).size());
  }

  @Test
  void aPartnerWhoIsDisplacedIsHeardAsItArrives() {
    long eighth = Math.round(GRID.stepMicros());
    play(step -> step >= 40 && step < 80 ? eighth : 0L, step -> true);
    assertThat(inTime.follows("Ben")).as("home again").isTrue();
    assertThat(sounded)
        .as("arrivals of the displaced stretch")
        .contains(GRID.instantOf(58) + eighth + LINE);
  }

  @Test
  void aPartnerWhoFallsSilentIsNoLongerSounded() {
    play(step -> 0L, step -> step < 40);
    assertThat(inTime.follows("Ben")).isFalse();
    assertThat(sounded.stream().filter(at -> at > GRID.microsAt(40)).count())
        .as("a few notes are given out before the silence is certain")
        .isBetween(2L, 5L);
  }

  @Test
  void theModelExpectsAQuarterOfTheDelayABeat() {
    assertThat(Drag.millisABeat(40, Drag.USUAL_GAIN)).isEqualTo(10);
    assertThat(Drag.percent(40, Drag.USUAL_GAIN, 500)).isEqualTo(2);
  }

  private interface Late {
    long micros(int step);
  }

  private interface Plays {
    boolean at(int step);
  }

  /** Both play, Ben as said; time passes in steps of 20 ms, attacks arrive over the line. */
  private void play(Late ben, Plays plays) {
    List<long[]> arriving = new ArrayList<>();
    for (int step : every(2, 4)) {
      if (plays.at(step)) {
        long at = GRID.instantOf(step) + ben.micros(step);
        arriving.add(new long[] {at + LINE, at, 1});
      }
    }
    for (int step : every(0, 4)) {
      long at = GRID.instantOf(step) + 8_000 * (ben.micros(step) == 8_000 ? 1 : 0);
      arriving.add(new long[] {at, at, 0});
    }
    arriving.sort((one, other) -> Long.compare(one[0], other[0]));
    int next = 0;
    for (long now = 4_000_000; now < GRID.microsAt(BARS * 8) + 2_000_000; now += 20_000) {
      while (next < arriving.size() && arriving.get(next)[0] <= now) {
        long[] one = arriving.get(next++);
        if (inTime.arrived(one[2] == 1 ? "Ben" : "Ana", one[1])) {
          sounded.add(one[0]);
        }
      }
      inTime.due(now, now + AHEAD).forEach(note -> sounded.add(note.micros()));
    }
    sounded.sort(null);
  }

  private static List<Integer> every(int first, int step) {
    return IntStream.iterate(first, at -> at < BARS * 8, at -> at + step).boxed().toList();
  }
}

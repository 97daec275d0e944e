package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.scoring.LiveScorer.Judgement;
import thinclick.server.scoring.LiveScorer.Kind;

/** Judging during a take: from what came before, settled again when later attacks say otherwise. */
class LiveScorerTest {
  private static final long STEP = 250_000; // eighths at 120

  private static Take take() {
    List<Integer> charleston = new ArrayList<>();
    List<Integer> beats = new ArrayList<>();
    for (int bar = 0; bar < 8; bar++) {
      charleston.add(8 * bar);
      charleston.add(8 * bar + 3);
      for (int beat = 0; beat < 4; beat++) {
        beats.add(8 * bar + 2 * beat);
      }
    }
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        0,
        50.0,
        List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)),
        List.of(Part.of("Ana", 0, beats), Part.of("Ben", 0, charleston)),
        List.<Attack>of(),
        null,
        List.of());
  }

  @Test
  void attacksWithinToleranceAreTogetherAndOthersEarlyOrLate() {
    LiveScorer live = new LiveScorer(take());
    for (int beat = 0; beat < 8; beat++) {
      assertThat(live.judge("Ana", 2 * beat * STEP).get(0).kind()).isEqualTo(Kind.TOGETHER);
    }
    assertThat(live.judge("Ben", 16 * STEP).get(0).kind()).isEqualTo(Kind.TOGETHER);
    assertThat(live.judge("Ben", 19 * STEP - 70_000).get(0).kind()).isEqualTo(Kind.EARLY);
    assertThat(live.judge("Ben", 22 * STEP).get(0).kind()).isEqualTo(Kind.ADDED);
  }

  @Test
  void aPlayerAStepLateIsFoundOutAndEarlierJudgementsAreTakenBack() {
    LiveScorer live = new LiveScorer(take());
    List<Judgement> again = new ArrayList<>();
    for (int bar = 0; bar < 8; bar++) {
      int late = bar >= 2 ? 1 : 0;
      live.judge("Ana", 8 * bar * STEP);
      for (int step : new int[] {0, 3}) {
        List<Judgement> told = live.judge("Ben", (8 * bar + step + late) * STEP);
        again.addAll(told.subList(1, told.size()));
        if (bar >= 5) {
          assertThat(told.get(0).kind()).isEqualTo(Kind.DISPLACED);
          assertThat(told.get(0).displacement()).isEqualTo(1);
        }
      }
    }
    assertThat(again).isNotEmpty().anyMatch(one -> one.kind() == Kind.DISPLACED);
  }

  @Test
  void aDoubleTriggerIsSetAside() {
    LiveScorer live = new LiveScorer(take());
    live.judge("Ana", 0);
    assertThat(live.judge("Ana", 20_000).get(0).kind()).isEqualTo(Kind.SET_ASIDE);
  }
}

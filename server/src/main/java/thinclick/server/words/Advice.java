package thinclick.server.words;

import java.util.List;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Thinning;

/**
 * What to do next about a finding. Where two are due, the one further up is said first.
 *
 * <p>The pairs of finding and advice are common practice, no source.
 */
public enum Advice {
  /** Nothing was heard: the sound check and the keys first, then the same once more. */
  CHECK_THE_SOUND,
  /** Somebody played another's part. */
  AGREE_ON_PARTS,
  /** Turned around: count aloud, all beats, half as many bars. */
  COUNT_ALOUD,
  /** A beat or a bar out: say each bar's number on its one, and the drill Short threes. */
  BAR_NUMBERS,
  /** Lost the ending: loop the last bar, then add bars backwards. */
  LOOP_THE_ENDING,
  /** Came in late: the drill Push only. */
  PUSH_ONLY,
  /** Rushes when the click is gone: islands, the tempo down by a tenth. */
  ISLANDS,
  /** Drags when the click is gone: sing the sixteenths, click every second bar. */
  SING,
  /** Added notes: the drill Gapped ands, softly. */
  GAPPED_ANDS,
  /** Dropped notes: the same again, slower. */
  SLOWER,
  /** Upbeats early: the drill Ands alone. */
  ANDS_ALONE,
  /** Upbeats late: the drill Two-and four-and, slower. */
  TWO_AND_FOUR_AND,
  /** Uneven: the drill Even eighths, softer, at 60. */
  EVEN_EIGHTHS,
  /** Faint or doubled attacks: the pad's own threshold, before the next take. */
  CHECK_THE_PAD,
  /** Only one follows: change who leads. */
  CHANGE_THE_LEAD,
  /** Too little was played to judge. */
  PLAY_LONGER,
  /** Half the band was lost: two rungs back. */
  TWO_RUNGS_BACK,
  /** Not held: one rung back. */
  RUNG_BACK,
  /** Nearly: the same again. */
  SAME_AGAIN,
  /** All held, once: the same again, and then the next rung. */
  ONCE_MORE,
  /** All held, twice: the next rung, same tempo. */
  NEXT_RUNG;

  private static final double SLOWER_BY = 0.9;

  /** At most 8 % at a time. */
  private static final double FASTER_BY = 1.08;

  /** What is said after a take. */
  Said said(Take take) {
    return switch (this) {
      case ISLANDS, SLOWER -> Said.of("next." + name(), slower(take));
      case NEXT_RUNG -> nextRung(take);
      case RUNG_BACK -> rungsBack(take, 1);
      case TWO_RUNGS_BACK -> rungsBack(take, 2);
      default -> Said.of("next." + name());
    };
  }

  /** Every stage a rung thinner; where all were silent already, the tempo. */
  private static Said nextRung(Take take) {
    List<Stage> next = thinning(take).fewerClicks(take.stages(), 0);
    if (take.stages().stream().allMatch(stage -> silent(take, stage))) {
      return Said.of("next.FASTER", Quantity.exact(Math.floor(FASTER_BY * take.tempo())));
    }
    return Said.of("next.NEXT_RUNG", ClickWords.on(next.get(0), take.meter(), take.stepsPerBeat()));
  }

  /** Every stage one rung fuller or two; where every beat clicked already, the tempo. */
  private static Said rungsBack(Take take, int rungs) {
    List<Stage> next = take.stages();
    for (int i = 0; i < rungs; i++) {
      next = thinning(take).moreClicks(next, 0);
    }
    Stage last = next.get(next.size() - 1);
    return next.equals(take.stages())
        ? Said.of("next.moreSlowly", slower(take))
        : Said.of(
            rungs == 1 ? "next.RUNG_BACK" : "next.TWO_RUNGS_BACK",
            ClickWords.of(last, take.meter(), take.stepsPerBeat()));
  }

  private static Quantity slower(Take take) {
    return Quantity.exact(Math.rint(SLOWER_BY * take.tempo()));
  }

  private static boolean silent(Take take, Stage stage) {
    return ClickWords.silent(stage, take.meter(), take.stepsPerBeat());
  }

  private static Thinning thinning(Take take) {
    return new Thinning(take.meter(), take.stepsPerBeat(), null);
  }
}

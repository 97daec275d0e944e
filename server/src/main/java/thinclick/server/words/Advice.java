package thinclick.server.words;

import thinclick.protocol.json.Check;

/**
 * What to do next about a finding. Where two are due, the one further up is said first.
 *
 * <p>The pairs of finding and advice are common practice, no source.
 */
public enum Advice {
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
  /** Not held: one rung back. */
  RUNG_BACK,
  /** Nearly: the same again. */
  SAME_AGAIN,
  /** All held: the next rung, same tempo. */
  NEXT_RUNG;

  /** What is said, for a take at a tempo. */
  Said said(double tempo) {
    return switch (this) {
      case ISLANDS, SLOWER -> Said.of("next." + name(), Check.number(Math.rint(0.9 * tempo)));
      default -> Said.of("next." + name());
    };
  }
}

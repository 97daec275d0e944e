package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.CueSheet.Cue;
import thinclick.client.sound.RoomTimes;
import thinclick.client.sound.Voice;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.StepGrid;
import thinclick.server.scoring.Analysis;

/** A take as it is listened to again: the own attacks against the click or against the pulse. */
final class Listening {
  private static final long LEAD_NANOS = 600_000_000L;

  private Listening() {}

  /** The own attacks and every click that sounded; none after a take that was stopped. */
  static CueSheet againstClick(Analysis analysis, String own) {
    Take take = analysis.take();
    List<Cue> cues = attacks(take, own);
    Long ended = take.endMicros();
    for (Click click : take.plan().clicks(take.grid())) {
      if (ended != null && click.micros() >= ended) {
        break;
      }
      cues.add(new Cue(click.micros(), click.downbeat() ? Voice.ONE : Voice.BEAT));
    }
    return CueSheet.ofCues(cues, take.grid().beatMicros());
  }

  /** The own attacks and the pulse of the band on every beat where it is known. */
  static CueSheet againstPulse(Analysis analysis, String own) {
    Take take = analysis.take();
    StepGrid grid = take.grid();
    List<Cue> cues = attacks(take, own);
    for (int step = 0; step < analysis.pulseMillis().size(); step += grid.stepsPerBeat()) {
      Double millis = analysis.pulseMillis().get(step);
      if (millis != null) {
        Voice voice = step % grid.stepsPerBar() == 0 ? Voice.ONE : Voice.BEAT;
        cues.add(new Cue(grid.startMicros() + Math.round(millis * 1e3), voice));
      }
    }
    return CueSheet.ofCues(cues, grid.beatMicros());
  }

  private static List<Cue> attacks(Take take, String own) {
    List<Cue> cues = new ArrayList<>();
    for (Attack attack : take.attacks()) {
      if (attack.player().equals(own)) {
        cues.add(new Cue(attack.micros(), Voice.WOOD));
      }
    }
    return cues;
  }

  /** How long it takes until the last of it has sounded, milliseconds. */
  static long lastsMillis(Take take) {
    StepGrid grid = take.grid();
    long planned = Math.round(grid.microsAt((long) take.plan().bars() * grid.stepsPerBar()));
    Long ended = take.endMicros();
    long end = ended == null ? planned : Math.min(ended, planned);
    long last = take.attacks().stream().mapToLong(Attack::micros).max().orElse(end);
    return (Math.max(end, last) - begins(take)) / 1_000 + 2 * LEAD_NANOS / 1_000_000;
  }

  /** Lets a take begin again a moment after an instant of the monotonic clock. */
  static RoomTimes from(Take take, long nowNanos) {
    return RoomTimes.meeting(begins(take), nowNanos + LEAD_NANOS);
  }

  private static long begins(Take take) {
    long first = take.attacks().stream().mapToLong(Attack::micros).min().orElse(take.startMicros());
    return Math.min(take.startMicros(), first);
  }
}

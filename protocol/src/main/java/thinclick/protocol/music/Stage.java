package thinclick.protocol.music;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * One stage of a click plan: how many bars, and where they click.
 *
 * @param bars length of the stage, at least 1
 * @param everyBars the click's cycle in bars, counted from the stage's start; a last incomplete
 *     cycle is cut
 * @param beats the beats that click in the first bar of each cycle, counted from 1; null where
 *     steps are given
 * @param steps the steps that click, counted from 0 through the whole cycle; null where beats are
 *     given
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Stage(
    int bars, int everyBars, @Nullable List<Integer> beats, @Nullable List<Integer> steps) {
  /** The longest stage, bars. */
  public static final int MAX_BARS = 10_000;

  public Stage {
    Check.range("bars", bars, 1L, MAX_BARS);
    Check.range("everyBars", everyBars, 1L, MAX_BARS);
    if ((beats == null) == (steps == null)) {
      throw new BadInput(
          "", "expected either beats or steps, found " + (beats == null ? "neither" : "both"));
    }
    if (beats != null) {
      beats = Check.list("beats", beats);
      Check.ascending("beats", beats, 1, 12);
    }
    if (steps != null) {
      steps = Check.list("steps", steps);
      Check.ascending("steps", steps, 0, Integer.MAX_VALUE);
    }
  }

  /** A stage given by beats of each cycle's first bar. */
  public static Stage ofBeats(int bars, int everyBars, Integer... beats) {
    return new Stage(bars, everyBars, List.of(beats), null);
  }

  /** A stage given by steps of each cycle. */
  public static Stage ofSteps(int bars, int everyBars, Integer... steps) {
    return new Stage(bars, everyBars, null, List.of(steps));
  }

  /** Refuses beats or steps that the meter does not have. */
  public void checkMeter(Meter meter, int stepsPerBeat) {
    if (beats != null) {
      for (int i = 0; i < beats.size(); i++) {
        if (beats.get(i) > meter.beatsPerBar()) {
          throw new BadInput(
              "beats[" + i + "]",
              "expected a beat from 1 to "
                  + meter.beatsPerBar()
                  + " in "
                  + meter
                  + ", found "
                  + beats.get(i));
        }
      }
    }
    if (steps != null) {
      long cycle = (long) everyBars * meter.stepsPerBar(stepsPerBeat);
      for (int i = 0; i < steps.size(); i++) {
        if (steps.get(i) >= cycle) {
          throw new BadInput(
              "steps[" + i + "]",
              "expected a step from 0 to "
                  + (cycle - 1)
                  + " in "
                  + everyBars
                  + (everyBars == 1 ? " bar, found " : " bars, found ")
                  + steps.get(i));
        }
      }
    }
  }

  /** The steps that click, counted from the stage's start, ascending, a last cycle cut. */
  public List<Long> clickedSteps(Meter meter, int stepsPerBeat) {
    int stepsPerBar = meter.stepsPerBar(stepsPerBeat);
    long cycle = (long) everyBars * stepsPerBar;
    long end = (long) bars * stepsPerBar;
    List<Long> inCycle =
        beats != null
            ? beats.stream().map(beat -> (beat - 1L) * stepsPerBeat).toList()
            : Check.present("steps", steps).stream().map(Integer::longValue).toList();
    return Stream.iterate(0L, at -> at < end, at -> at + cycle)
        .flatMap(at -> inCycle.stream().map(step -> at + step))
        .filter(step -> step < end)
        .toList();
  }
}

package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** What clicks in a stage, as it is called across a band room. */
public final class ClickWords {
  private ClickWords() {}

  /** "all beats", "two and four", "the one of every second bar", "no click". */
  public static Said of(Stage stage, Meter meter, int stepsPerBeat) {
    return new Pattern(stage, meter, stepsPerBeat).said();
  }

  /** The same where room is scarce: "all beats", "two and four", "the one", "last beat". */
  public static Said briefly(Stage stage, Meter meter, int stepsPerBeat) {
    return new Pattern(stage, meter, stepsPerBeat).briefly();
  }

  /** The same after "together": "on two and four", "without a click". */
  public static Said on(Stage stage, Meter meter, int stepsPerBeat) {
    return silent(stage, meter, stepsPerBeat)
        ? Said.of("on.none")
        : Said.of("on.click", of(stage, meter, stepsPerBeat));
  }

  /** "eight silent bars", "the eight bars on two and four". */
  static Said through(Stage stage, Meter meter, int stepsPerBeat) {
    Said bars = Speaker.number(stage.bars());
    return silent(stage, meter, stepsPerBeat)
        ? Said.of("through.silent", stage.bars(), bars)
        : Said.of("through.click", stage.bars(), bars, of(stage, meter, stepsPerBeat));
  }

  /** Above the first bar of a stage: "8 bars, click on two and four", "one bar, no click". */
  public static Said heading(Stage stage, Meter meter, int stepsPerBeat) {
    Said clicks = of(stage, meter, stepsPerBeat);
    return silent(stage, meter, stepsPerBeat)
        ? Said.of("heading.silent", stage.bars(), Integer.toString(stage.bars()), clicks)
        : Said.of("heading.click", stage.bars(), Integer.toString(stage.bars()), clicks);
  }

  /** Above a bar inside a stage, to remind of what holds there: "(click on two and four)". */
  public static Said held(Stage stage, Meter meter, int stepsPerBeat) {
    Said clicks = of(stage, meter, stepsPerBeat);
    return silent(stage, meter, stepsPerBeat)
        ? Said.of("heading.held.silent", clicks)
        : Said.of("heading.held.click", clicks);
  }

  static boolean silent(Stage stage, Meter meter, int stepsPerBeat) {
    return stage.clickedSteps(meter, stepsPerBeat).isEmpty();
  }

  /** One stage's cycle, looked at bar by bar. */
  private static final class Pattern {
    private final Meter meter;
    private final int stepsPerBeat;
    private final int stepsPerBar;
    private final int cycleBars;
    private final List<List<Integer>> bars = new ArrayList<>();
    private final int clicks;

    Pattern(Stage stage, Meter meter, int stepsPerBeat) {
      this.meter = meter;
      this.stepsPerBeat = stepsPerBeat;
      stepsPerBar = meter.stepsPerBar(stepsPerBeat);
      cycleBars = Math.min(stage.everyBars(), stage.bars());
      List<Long> clicked =
          stage.clickedSteps(meter, stepsPerBeat).stream()
              .filter(step -> step < (long) cycleBars * stepsPerBar)
              .toList();
      clicks = clicked.size();
      for (int bar = 0; bar < cycleBars; bar++) {
        int index = bar;
        bars.add(
            clicked.stream()
                .filter(step -> step / stepsPerBar == index)
                .map(step -> (int) (step % stepsPerBar))
                .toList());
      }
    }

    Said said() {
      List<List<Integer>> sounding = bars.stream().filter(bar -> !bar.isEmpty()).toList();
      if (sounding.isEmpty()) {
        return Said.of("click.none");
      }
      List<Integer> first = sounding.get(0);
      if (!sounding.stream().allMatch(first::equals)) {
        return everyThird()
            ? Said.of("click.everyThird")
            : Said.of(
                "click.other",
                clicks,
                Speaker.number(clicks),
                cycleBars,
                Speaker.number(cycleBars));
      }
      if (sounding.size() == cycleBars) {
        return oneBeat(first) ? Said.of("click.everyBar", inBar(first)) : inBar(first);
      }
      if (sounding.size() == 1) {
        return Said.of("click.everyBars", inBar(first), ordinal(cycleBars));
      }
      boolean island =
          IntStream.range(0, cycleBars)
              .allMatch(bar -> bars.get(bar).isEmpty() == (bar >= sounding.size()));
      return Said.of(
          island ? "click.island" : "click.someBars",
          inBar(first),
          Speaker.number(sounding.size()),
          Speaker.number(island ? cycleBars - sounding.size() : cycleBars));
    }

    /** A beat that sounds in every bar goes without "alone". */
    Said briefly() {
      List<Integer> first = bars.get(0);
      boolean oneBeat =
          first.size() == 1
              && first.get(0) % stepsPerBeat == 0
              && bars.stream().allMatch(first::equals);
      if (!oneBeat) {
        return said();
      }
      int beat = first.get(0) / stepsPerBeat + 1;
      return beat == 1
          ? Said.of("click.brief.first")
          : beat == meter.beatsPerBar()
              ? Said.of("click.brief.last")
              : Said.of("click.brief.beat", Speaker.number(beat));
    }

    /** One beat of several: what is said of it is to be said of every bar. */
    private boolean oneBeat(List<Integer> steps) {
      return steps.size() == 1 && steps.get(0) % stepsPerBeat == 0 && meter.beatsPerBar() > 1;
    }

    /** What a bar that clicks at these steps is called. */
    private Said inBar(List<Integer> steps) {
      if (steps.stream().allMatch(step -> step % stepsPerBeat == 0)) {
        return beats(steps.stream().map(step -> step / stepsPerBeat + 1).toList());
      }
      int and = stepsPerBeat == 6 ? 4 : stepsPerBeat == 2 ? 1 : 2;
      boolean offTheBeatAlike =
          steps.stream().allMatch(step -> step % stepsPerBeat == steps.get(0) % stepsPerBeat);
      if (offTheBeatAlike && steps.get(0) % stepsPerBeat == and) {
        if (steps.size() == meter.beatsPerBar()) {
          return Said.of("click.ands");
        }
        if (steps.size() == 1 && steps.get(0) == stepsPerBar - stepsPerBeat + and) {
          return Said.of("click.lastAnd");
        }
      }
      if (offTheBeatAlike
          && steps.get(0) % stepsPerBeat == 1
          && steps.size() == meter.beatsPerBar()) {
        return Said.of("click.movedFloor");
      }
      return Said.of("click.steps", steps.size(), Speaker.number(steps.size()));
    }

    private Said beats(List<Integer> beats) {
      if (beats.size() == meter.beatsPerBar()) {
        return Said.of("click.all");
      }
      if (beats.size() > 1) {
        return Said.of(
            "click.beats", new Said.Row(beats.stream().map(Speaker::number).toList(), true));
      }
      int beat = beats.get(0);
      return beat == 1
          ? Said.of("click.one")
          : beat == meter.beatsPerBar()
              ? Said.of("click.last")
              : Said.of("click.beat", Speaker.number(beat));
    }

    private boolean everyThird() {
      List<Integer> all = new ArrayList<>();
      for (int bar = 0; bar < cycleBars; bar++) {
        int from = bar * stepsPerBar;
        bars.get(bar).forEach(step -> all.add(from + step));
      }
      return all.equals(
          IntStream.range(0, cycleBars * stepsPerBar)
              .filter(step -> step % 3 == 0)
              .boxed()
              .toList());
    }

    private static Said ordinal(int bars) {
      return bars <= 8 ? Said.of("ordinal." + bars) : Said.of("ordinal.other", bars);
    }
  }
}

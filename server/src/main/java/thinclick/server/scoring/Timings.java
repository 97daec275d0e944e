package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.model.GridAttack;
import thinclick.server.scoring.model.Performance;
import thinclick.server.scoring.model.ThinnerClick;
import thinclick.server.scoring.model.TimingModel;
import thinclick.server.scoring.model.Voice;

/** Hands a decoded take to the timing model. */
final class Timings {
  /** A click is left out where the followed tempo has carried the band so far from it, ms. */
  private static final double CARRIED_OFF = 1;

  private static final int[] THINNER_EVERY_BARS = {1, 2, 4};
  private static final int SILENT_BARS = 8;

  private final Understanding understood;
  private final Sheet sheet;

  private Timings(Understanding understood) {
    this.understood = understood;
    sheet = understood.sheet();
  }

  /** What the model makes of the take. */
  static ModelFigures of(Understanding understood) {
    Timings timings = new Timings(understood);
    return new ModelFigures(understood, TimingModel.fit(timings.performance()), timings.thinner());
  }

  private Performance performance() {
    List<Voice> voices = new ArrayList<>();
    for (Reading reading : understood.readings()) {
      voices.add(voice(reading));
    }
    List<Integer> clicks = new ArrayList<>();
    for (int step : sheet.clickSteps) {
      if (Math.abs(understood.places().bendAt(step)) <= CARRIED_OFF) {
        clicks.add(step);
      }
    }
    return new Performance(
        sheet.beatMillis(),
        sheet.grid.stepsPerBeat(),
        Math.max(1, understood.swing()),
        clicks,
        voices);
  }

  private Voice voice(Reading reading) {
    List<GridAttack> attacks = new ArrayList<>();
    for (int k = 0; k < reading.size(); k++) {
      if (reading.partner[k] != Matcher.NONE && reading.shift[k] == 0) {
        int step = reading.chair.steps[k];
        double played = reading.chair.attacks[reading.partner[k]] - reading.feel(sheet, k);
        attacks.add(new GridAttack(step, played - understood.places().at(step)));
      }
    }
    Hearing hearing = reading.chair.part.hearing();
    boolean hears = hearing == null || hearing.mode() == Hearing.Mode.AS_IT_ARRIVES;
    return new Voice(
        reading.chair.part.player(),
        reading.size() + reading.chair.freely.length, // what others may have followed as well
        attacks,
        hears,
        hearing == null ? 0 : hearing.delayMillis(),
        understood.readings().length == 1 || !hears ? ahead(reading) : List.of());
  }

  /** Stages thinner than any that was played, each as long as the last; silence of its own. */
  private List<Stage> thinner() {
    List<Stage> stages = sheet.take.stages();
    double thinnest = Double.POSITIVE_INFINITY;
    boolean silence = false;
    for (int s = 0; s < stages.size(); s++) {
      double clicks = sheet.plan.clicksPerBar(s, sheet.take.meter(), sheet.take.stepsPerBeat());
      silence |= clicks == 0;
      thinnest = clicks > 0 ? Math.min(thinnest, clicks) : thinnest;
    }
    int bars = stages.get(stages.size() - 1).bars();
    List<Stage> thinner = new ArrayList<>();
    for (int every : THINNER_EVERY_BARS) {
      if (1.0 / every < thinnest && bars >= 2 * every) {
        thinner.add(Stage.ofBeats(bars, every, 1));
      }
    }
    if (!silence) {
      thinner.add(Stage.ofBeats(SILENT_BARS, 1));
    }
    return thinner;
  }

  /** The same as the model takes them, with what the player has written in the last stage. */
  private List<ThinnerClick> ahead(Reading reading) {
    int from = sheet.stageFrom[sheet.take.stages().size() - 1];
    List<Integer> attacks =
        reading.chair.part.attackSteps().stream()
            .filter(step -> step >= from)
            .map(step -> step - from)
            .toList();
    List<ThinnerClick> plans = new ArrayList<>();
    for (Stage stage : thinner()) {
      List<Integer> clicks =
          stage.clickedSteps(sheet.take.meter(), sheet.take.stepsPerBeat()).stream()
              .map(Long::intValue)
              .toList();
      plans.add(
          clicks.isEmpty()
              ? ThinnerClick.silent(
                  "silence", (double) stage.bars() * sheet.stepsPerBar / sheet.grid.stepsPerBeat())
              : ThinnerClick.clicking("every " + stage.everyBars() + " bars", attacks, clicks));
    }
    return plans;
  }
}

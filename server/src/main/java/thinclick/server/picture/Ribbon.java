package thinclick.server.picture;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.StepGrid;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * A hatched ribbon over the bars: its middle is where the ensemble pulse stood against the written
 * grid, late upward, its width the spread of the stage to either side.
 */
final class Ribbon {
  private static final double HEIGHT = 216;
  private static final double SENTENCE = 30;
  private static final double PLOT = 130;
  private static final double LEAST_RANGE_MILLIS = 40;

  private Ribbon() {}

  /** How high it is; a sentence where no pulse is known. */
  static double height(Analysis analysis) {
    return known(analysis) ? HEIGHT : SENTENCE;
  }

  private static boolean known(Analysis analysis) {
    return analysis.pulseMillis().stream().anyMatch(Objects::nonNull)
        && analysis.players().stream()
            .flatMap(player -> player.played().stream())
            .anyMatch(one -> one.kind() == Analysis.Kind.MATCHED);
  }

  static void draw(
      Easel easel, Analysis analysis, Spoken spoken, BarScale scale, double top, Speaker speaker) {
    if (!known(analysis)) {
      double left = scale.left() - BarScale.NAMES;
      String says = speaker.say("picture.noPulse");
      easel.words(left, top + 12, Easel.BODY, Anchor.START, says, Tint.INK);
      return;
    }
    List<@Nullable Double> pulse = analysis.pulseMillis();
    StepGrid grid = analysis.take().grid();
    int stepsPerBar = grid.stepsPerBar();
    double[] off = new double[pulse.size()];
    double range = LEAST_RANGE_MILLIS;
    for (int step = 0; step < off.length; step++) {
      Double at = pulse.get(step);
      off[step] = at == null ? Double.NaN : at - (grid.microsAt(step) - grid.startMicros()) / 1_000;
      StageReview stage = analysis.review().stages().get(stageOf(analysis, step / stepsPerBar));
      if (at != null) {
        range = Math.max(range, Math.abs(off[step]) + stage.spreadMillis().orElse(0));
      }
    }
    double tick = tick(range);
    range = tick * Math.ceil(range / tick);
    double middle = top + 24 + PLOT / 2;
    double unit = PLOT / 2 / range;
    easel.box(scale.left(), top + 24, scale.width(), PLOT, Tint.SHEET);
    for (double at = -range; at <= range + 1e-6; at += tick) {
      double y = middle - at * unit;
      easel.line(scale.left(), y, scale.x(scale.bars()), y, at == 0 ? 1 : .4, Tint.RULE);
      String text =
          String.format(Locale.ROOT, at == 0 ? "%.0f" : "%+.0f", at).replace('-', '\u2212');
      easel.words(scale.left() - 6, y + 4, Easel.SMALL, Anchor.END, text, Tint.SOFT);
    }
    hatch(easel, analysis, off, stepsPerBar, scale, middle, unit);
    curve(easel, off, stepsPerBar, scale, middle, unit);
    scale.edges(easel, analysis.review(), top + 24, top + 24 + PLOT);
    stages(easel, analysis, spoken, scale, top, speaker);
  }

  private static void hatch(
      Easel easel,
      Analysis analysis,
      double[] off,
      int stepsPerBar,
      BarScale scale,
      double middle,
      double unit) {
    for (double x = scale.left() + 2; x < scale.x(scale.bars()); x += 4) {
      double bar = (x - scale.left()) / scale.width() * scale.bars();
      int step = (int) (bar * stepsPerBar);
      if (step >= off.length || Double.isNaN(off[step])) {
        continue;
      }
      StageReview stage = analysis.review().stages().get(stageOf(analysis, step / stepsPerBar));
      double half = stage.spreadMillis().orElse(0) * unit;
      double y = middle - off[step] * unit;
      easel.line(x - 1.5, y + half, x + 1.5, y - half, 1, Tint.SOFT);
    }
  }

  private static void curve(
      Easel easel, double[] off, int stepsPerBar, BarScale scale, double middle, double unit) {
    for (int step = 1; step < off.length; step++) {
      if (!Double.isNaN(off[step]) && !Double.isNaN(off[step - 1])) {
        easel.line(
            scale.x((step - 1.0) / stepsPerBar),
            middle - off[step - 1] * unit,
            scale.x((double) step / stepsPerBar),
            middle - off[step] * unit,
            2,
            Tint.INK);
      }
    }
  }

  /** Above: how much was held. Below: what clicked, as far as there is room. */
  private static void stages(
      Easel easel, Analysis analysis, Spoken spoken, BarScale scale, double top, Speaker speaker) {
    List<StageReview> stages = analysis.review().stages();
    double bottom = top + 24 + PLOT;
    for (int i = 0; i < stages.size(); i++) {
      StageReview stage = stages.get(i);
      double left = scale.x(stage.fromBar());
      double width = scale.x(stage.toBar()) - left - 8;
      String held =
          stage.hold().known()
              ? speaker.say(Said.of("picture.held", Quantity.percent(stage.hold())))
              : speaker.say("picture.notKnown");
      if (Face.REGULAR.width(held, Easel.BODY) <= width) {
        easel.words(left + 4, top + 17, Easel.BODY, Anchor.START, held, Tint.INK);
      }
      List<String> lines = Easel.wrap(spoken.clicks().get(i), Easel.SMALL, width);
      for (int line = 0; line < Math.min(2, lines.size()); line++) {
        easel.words(
            left + 4,
            bottom + BarScale.NUMBERS + 12 + 14 * line,
            Easel.SMALL,
            Anchor.START,
            Easel.cut(lines.get(line), Easel.SMALL, width),
            Tint.SOFT);
      }
    }
    scale.numbers(easel, bottom, speaker);
  }

  private static int stageOf(Analysis analysis, int bar) {
    return Math.max(0, analysis.take().plan().stageAt(bar));
  }

  private static double tick(double range) {
    double[] ticks = {10, 20, 50, 100, 200, 500, 1_000, 2_000, 5_000, 10_000, 50_000};
    for (double tick : ticks) {
      if (range / tick <= 3) {
        return tick;
      }
    }
    return range;
  }
}

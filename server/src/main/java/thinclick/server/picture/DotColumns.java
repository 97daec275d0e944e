package thinclick.server.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.StepGrid;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Analysis.Kind;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Tally;

/**
 * One player's attacks in upright columns, a column for each place of the bar: how early or late
 * against the pulse, late upward, the bars from left to right. What lies in the shaded strip is
 * placed, so that it lies where a steady lean that is not charged put it, and too early and too
 * late are its two sides. What was dropped and what was added is counted below its place; the sum
 * of it all stands above, with whose it is, unless the page says both. Where there is no distance
 * to be drawn, a sentence says why.
 */
final class DotColumns {
  private static final double PLOT = 104;
  private static final double LINE = 15;
  private static final double COUNTS = 16;
  private static final double AXIS = 52;
  private static final double SENTENCE = 30;
  private static final double NAME = 18;

  /** How much of a column the bars take. */
  private static final double SPREAD = 0.5;

  /** No further are the dots of neighbouring bars apart. */
  private static final double WIDEST_BAR = 7;

  /** Free between two columns, so that each is seen as one. */
  private static final double GAP = 3;

  private final Analysis analysis;
  private final Analysis.PlayerAnalysis player;
  private final DotScale scale;
  private final double width;
  private final int places;
  private final List<Dot> dots;
  private final int[] dropped;
  private final int[] added;
  private final List<String> sum;
  private final Speaker speaker;
  private final boolean named;

  /**
   * An attack that answered what is written, at home.
   *
   * @param place of the bar, from 0
   * @param bar of the take, from 0
   * @param fate whether it was placed
   */
  private record Dot(int place, int bar, double asynchronyMillis, Fate fate) {}

  /**
   * @param named whether whose it is and the sum stand above
   */
  DotColumns(
      Analysis analysis,
      Analysis.PlayerAnalysis player,
      DotScale scale,
      double width,
      boolean named,
      Speaker speaker) {
    this.analysis = analysis;
    this.player = player;
    this.scale = scale;
    this.width = width;
    this.speaker = speaker;
    this.named = named;
    places = analysis.take().grid().stepsPerBar();
    dots = dots(player, places);
    dropped = dropped(player, places);
    added = added(analysis, player, places);
    String above = sum();
    sum = above.isEmpty() ? List.of() : Easel.wrap(above, Easel.SMALL, width);
  }

  private String sum() {
    int beyond = (int) dots.stream().filter(one -> scale.beyond(one.asynchronyMillis())).count();
    if (!named) {
      return beyond == 0 ? "" : speaker.say(Said.of("tally.beyond", beyond));
    }
    Said tally = Tally.of(player).said();
    return speaker.say(beyond == 0 ? tally : Said.of("tally.andBeyond", tally, beyond));
  }

  /** How many lines the sum takes; those that stand side by side take the most of them. */
  int lines() {
    return sum.size();
  }

  /** Whether there is an attack to be drawn. */
  boolean plotted() {
    return !dots.isEmpty();
  }

  /** Whether a dot of this tint is drawn. */
  boolean draws(Tint tint) {
    return dots.stream().anyMatch(dot -> tint(dot.fate()) == tint);
  }

  /** Whether the strip is seen to lie off the pulse. */
  boolean leans() {
    return plotted() && allowed().side() != 0;
  }

  /** What of a steady lean is not charged: by so much the strip lies off the pulse. */
  Quantity allowed() {
    return Quantity.millis(player.notChargedMillis(), null);
  }

  /** How high it is where the sum has so many lines. */
  double height(int lines) {
    return plotted()
        ? plotTop(lines) + PLOT + 24 + rows() * COUNTS + 12
        : plotTop(lines) + SENTENCE;
  }

  /** Why no attack has a distance from the pulse. */
  private String nothing() {
    Tally tally = Tally.of(player);
    return speaker.say(
        tally.unjudged() > 0
            ? "picture.columns.noPulse"
            : tally.displaced() + tally.added() > 0
                ? "picture.columns.off"
                : "picture.columns.nothing");
  }

  private int rows() {
    return (any(dropped) ? 1 : 0) + (any(added) ? 1 : 0);
  }

  private static boolean any(int[] counts) {
    for (int count : counts) {
      if (count > 0) {
        return true;
      }
    }
    return false;
  }

  private double sumTop() {
    return named ? NAME : 0;
  }

  private double plotTop(int lines) {
    return sumTop() + lines * LINE + 12;
  }

  /** Draws it, its sum in a room of so many lines. */
  void draw(Easel easel, double left, double top, int lines) {
    double plotTop = top + plotTop(lines);
    double axis = left + AXIS;
    double column = (width - AXIS) / places;
    double middle = plotTop + PLOT / 2;
    double unit = PLOT / 2 / scale.rangeMillis();
    if (named) {
      String name = Easel.cut(player.player(), Easel.BODY, width);
      easel.words(left, top + 14, Easel.BODY, Anchor.START, name, Tint.INK);
    }
    for (int line = 0; line < sum.size(); line++) {
      double y = top + sumTop() + (line + 1) * LINE - 2;
      easel.words(left, y, Easel.SMALL, Anchor.START, sum.get(line), Tint.SOFT);
    }
    if (!plotted()) {
      String says = Easel.cut(nothing(), Easel.BODY, width);
      easel.words(left, plotTop + 6, Easel.BODY, Anchor.START, says, Tint.INK);
      return;
    }
    ground(easel, axis, plotTop, column * places, unit);
    beats(easel, axis, column, plotTop + PLOT);
    for (Dot dot : dots) {
      double x = axis + (dot.place() + .5) * column + aside(dot.bar(), column);
      double y = middle - scale.clamped(dot.asynchronyMillis()) * unit;
      easel.attack(x, y, tint(dot.fate()));
    }
    double y = plotTop + PLOT + 24 + COUNTS - 4;
    if (any(dropped)) {
      counts(easel, dropped, "page.stages.dropped", axis, column, y);
      y += COUNTS;
    }
    if (any(added)) {
      counts(easel, added, "page.stages.added", axis, column, y);
    }
  }

  /** The bars from left to right, as far apart as a column has room, so that dots keep clear. */
  private double aside(int bar, double column) {
    int last = Math.max(1, analysis.take().plan().bars() - 1);
    double wide = Math.min(column * SPREAD, WIDEST_BAR * last);
    return wide * ((double) Math.min(bar, last) / last - .5);
  }

  private static Tint tint(Fate fate) {
    return fate == Fate.EARLY ? Tint.EARLY : fate == Fate.LATE ? Tint.LATE : Tint.INK;
  }

  private void ground(Easel easel, double axis, double plotTop, double plotWidth, double unit) {
    double middle = plotTop + PLOT / 2;
    double tolerance = scale.toleranceMillis();
    easel.box(axis, plotTop, plotWidth, PLOT, Tint.SHEET);
    double top = middle - (player.notChargedMillis() + tolerance) * unit;
    easel.box(axis, top, plotWidth, 2 * tolerance * unit, Tint.BAND);
    for (int place = 1; place < places; place++) {
      double x = axis + plotWidth * place / places;
      easel.line(x, plotTop, x, plotTop + PLOT, GAP, Tint.PAPER);
    }
    easel.line(axis, middle, axis + plotWidth, middle, 1, Tint.RULE);
    int every = scale.numbered();
    int most = scale.tolerances() / every * every;
    for (int at = -most; at <= most; at += every) {
      String text = speaker.shown(Quantity.millis(Math.abs(at) * tolerance, null));
      String sign = at == 0 ? "" : at > 0 ? "+" : "\u2212";
      double y = middle - at * tolerance * unit + 4;
      easel.words(axis - 5, y, Easel.SMALL, Anchor.END, sign + text, Tint.SOFT);
    }
  }

  private void beats(Easel easel, double axis, double column, double bottom) {
    int stepsPerBeat = analysis.take().stepsPerBeat();
    String says = speaker.say("picture.beats");
    easel.words(axis - 5, bottom + 20, Easel.SMALL, Anchor.END, says, Tint.SOFT);
    for (int place = 0; place < places; place++) {
      double x = axis + (place + .5) * column;
      if (place % stepsPerBeat == 0) {
        String beat = Integer.toString(place / stepsPerBeat + 1);
        easel.line(x, bottom, x, bottom + 7, 1.4, Tint.INK);
        easel.words(x, bottom + 20, Easel.SMALL, Anchor.MIDDLE, beat, Tint.SOFT);
      } else {
        easel.line(x, bottom, x, bottom + 4, .8, Tint.RULE);
      }
    }
  }

  /** What is counted, and how many in the middle of each column that has any. */
  private void counts(Easel easel, int[] counts, String key, double axis, double column, double y) {
    easel.words(axis - 5, y, Easel.SMALL, Anchor.END, speaker.say(key), Tint.SOFT);
    for (int place = 0; place < counts.length; place++) {
      if (counts[place] > 0) {
        String text = Integer.toString(counts[place]);
        double x = axis + (place + .5) * column;
        easel.words(x, y, Easel.SMALL, Anchor.MIDDLE, text, Tint.INK);
      }
    }
  }

  private static List<Dot> dots(Analysis.PlayerAnalysis player, int places) {
    Map<Integer, Double> asynchronies = new HashMap<>();
    for (Analysis.Played one : player.played()) {
      Double asynchrony = one.asynchronyMillis();
      if (asynchrony != null) {
        asynchronies.put(one.attack(), asynchrony);
      }
    }
    List<Dot> dots = new ArrayList<>();
    for (Analysis.Written one : player.written()) {
      Integer attack = one.attack();
      Double asynchrony = attack == null ? null : asynchronies.get(attack);
      if (asynchrony != null && one.displacement() == 0) {
        dots.add(new Dot(one.step() % places, one.step() / places, asynchrony, one.fate()));
      }
    }
    return dots;
  }

  private static int[] dropped(Analysis.PlayerAnalysis player, int places) {
    int[] dropped = new int[places];
    for (Analysis.Written one : player.written()) {
      if (one.fate() == Fate.DROPPED) {
        dropped[one.step() % places]++;
      }
    }
    return dropped;
  }

  /** At the place of the bar that each added attack was nearest to, where the pulse stood. */
  private static int[] added(Analysis analysis, Analysis.PlayerAnalysis player, int places) {
    int[] added = new int[places];
    for (Analysis.Played one : player.played()) {
      if (one.kind() == Kind.ADDED) {
        long micros = analysis.take().attacks().get(one.attack()).micros();
        added[nearestStep(analysis, micros) % places]++;
      }
    }
    return added;
  }

  private static int nearestStep(Analysis analysis, long micros) {
    StepGrid grid = analysis.take().grid();
    double millis = (micros - grid.startMicros()) / 1e3;
    int nearest = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int step = 0; step < Math.max(1, analysis.pulseMillis().size()); step++) {
      @Nullable Double pulse =
          step < analysis.pulseMillis().size() ? analysis.pulseMillis().get(step) : null;
      double at = pulse == null ? (grid.microsAt(step) - grid.startMicros()) / 1e3 : pulse;
      if (Math.abs(millis - at) < least) {
        least = Math.abs(millis - at);
        nearest = step;
      }
    }
    return nearest;
  }
}

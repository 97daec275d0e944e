package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A review as people read it: a few sentences a bandleader understands, then the stages and the
 * players as tables, all under 80 columns.
 */
public final class ReviewText {
  private static final int WIDTH = 79;
  private static final int MOST_SENTENCES = 6;

  private final Review review;

  private ReviewText(Review review) {
    this.review = review;
  }

  /** Sentences, stages and players, ending with a line break. */
  public static String of(Review review) {
    ReviewText text = new ReviewText(review);
    return wrap(String.join(" ", text.sentences())) + "\n" + text.stages() + "\n" + text.players();
  }

  /** The sentences alone, three to six of them. */
  public static List<String> sentences(Review review) {
    return new ReviewText(review).sentences();
  }

  private List<String> sentences() {
    List<String> said = new ArrayList<>();
    said.add(together());
    said.addAll(drift());
    said.addAll(displaced());
    said.addAll(lost());
    said.addAll(steadiest());
    List<String> first = said.subList(0, Math.min(said.size(), MOST_SENTENCES - 1));
    List<String> all = new ArrayList<>(first);
    if (all.size() < 2) {
      all.add(tolerance());
    }
    all.add(next());
    return all;
  }

  private String together() {
    List<String> held = new ArrayList<>();
    for (StageReview stage : review.stages()) {
      if (stage.hold().known()) {
        held.add(whole(stage.hold().get()) + " % on " + stage.click());
      }
    }
    if (held.isEmpty()) {
      Figure hold = review.ensemble().hold();
      Reason reason = hold.reason();
      return "No verdict: " + (reason == null ? "nothing was judged" : reason.says()) + ".";
    }
    List<String> shown = held.size() <= 4 ? held : held.subList(0, 4);
    return "Together: " + String.join(", ", shown) + ".";
  }

  private List<String> drift() {
    StageReview most = null;
    for (StageReview stage : review.stages()) {
      if (stage.driftPercent().known()
          && Math.abs(stage.driftPercent().get()) >= 0.5
          && (most == null
              || Math.abs(stage.driftPercent().get()) > Math.abs(most.driftPercent().get()))) {
        most = stage;
      }
    }
    if (most == null) {
      return List.of();
    }
    double percent = most.driftPercent().get();
    int bars = most.toBar() - most.fromBar();
    return List.of(
        String.format(
            Locale.ROOT,
            "%s %.1f %% through the %s bars on %s at %s.",
            percent > 0 ? "Dragged" : "Rushed",
            Math.abs(percent),
            PlanWords.number(bars),
            most.click(),
            number(review.tempo())));
  }

  private List<String> displaced() {
    List<String> said = new ArrayList<>();
    int end = review.stages().get(review.stages().size() - 1).toBar();
    for (PlayerReview player : review.players()) {
      for (Displacement one : player.displacements()) {
        String home = one.toBar() >= end ? " to the end" : ", home at " + (one.toBar() + 1);
        said.add(
            player.player()
                + " "
                + ShiftWords.of(one.steps(), review.meter(), review.stepsPerBeat())
                + " from bar "
                + (one.fromBar() + 1)
                + home
                + ".");
      }
    }
    return said.size() <= 2 ? said : said.subList(0, 2);
  }

  private List<String> lost() {
    PlayerReview worst =
        review.players().stream()
            .filter(player -> !player.standIn() && player.written() > 0)
            .max(Comparator.comparingDouble(ReviewText::lostShare))
            .orElse(null);
    if (worst == null || lostShare(worst) < 0.1) {
      return List.of();
    }
    return List.of(
        worst.player()
            + ": "
            + worst.dropped()
            + " of "
            + worst.written()
            + " dropped, "
            + worst.added()
            + " added.");
  }

  private static double lostShare(PlayerReview player) {
    return (player.dropped() + player.added()) / (double) player.written();
  }

  private List<String> steadiest() {
    PlayerReview best =
        review.players().stream()
            .filter(player -> player.spreadMillis().known() && player.written() >= 12)
            .min(Comparator.comparingDouble(player -> player.spreadMillis().get()))
            .orElse(null);
    if (best == null) {
      return List.of();
    }
    return List.of(
        best.player()
            + ": "
            + best.placed()
            + " of "
            + best.written()
            + " placed, spread "
            + whole(best.spreadMillis().get())
            + " ms"
            + (review.players().size() > 1 ? "; the steadiest chair." : "."));
  }

  private String tolerance() {
    return "Placed means within " + whole(review.toleranceMillis()) + " ms of the pulse.";
  }

  private String next() {
    Figure hold = review.ensemble().hold();
    if (!hold.known()) {
      return "Play it again with more of the click.";
    }
    boolean out = review.players().stream().anyMatch(player -> !player.displacements().isEmpty());
    if (out) {
      return "Next: count aloud, all beats, half as many bars.";
    }
    if (hold.get() >= 90) {
      return "Next: the next rung, same tempo.";
    }
    return hold.get() >= 75 ? "Next: the same again." : "Next: one rung back, or a slower tempo.";
  }

  private String stages() {
    StringBuilder table = new StringBuilder();
    table.append(
        String.format(
            Locale.ROOT,
            "%-9s %-28s %10s %7s %7s %8s%n",
            "Bars",
            "Click",
            "Clicks/bar",
            "Hold %",
            "Spread",
            "Drift %"));
    for (StageReview stage : review.stages()) {
      table.append(
          String.format(
              Locale.ROOT,
              "%-9s %-28s %10s %7s %7s %8s%n",
              stage.fromBar() + 1 + "-" + stage.toBar(),
              cut(stage.click(), 28),
              number(stage.clicksPerBar()),
              figure(stage.hold(), 0),
              figure(stage.spreadMillis(), 0),
              figure(stage.driftPercent(), 1)));
    }
    return table.toString();
  }

  private String players() {
    StringBuilder table = new StringBuilder();
    table.append(
        String.format(
            Locale.ROOT,
            "%-16s %7s %6s %7s %5s %6s %6s  %s%n",
            "Player",
            "Written",
            "Placed",
            "Dropped",
            "Added",
            "Lean",
            "Spread",
            "Displaced"));
    for (PlayerReview player : review.players()) {
      table.append(
          String.format(
              Locale.ROOT,
              "%-16s %7d %6d %7d %5d %6s %6s  %s%n",
              cut(player.standIn() ? player.player() + " *" : player.player(), 16),
              player.written(),
              player.placed(),
              player.dropped(),
              player.added(),
              figure(player.leanMillis(), 0),
              figure(player.spreadMillis(), 0),
              cut(displaced(player), 18)));
    }
    table.append("Lean and spread in ms; a negative lean is early.");
    if (review.players().stream().anyMatch(PlayerReview::standIn)) {
      table.append(" * a stand-in.");
    }
    return table.append(System.lineSeparator()).toString();
  }

  private static String displaced(PlayerReview player) {
    List<String> said = new ArrayList<>();
    for (Displacement one : player.displacements()) {
      said.add(
          one.fromBar()
              + 1
              + "-"
              + one.toBar()
              + (one.steps() > 0 ? " by +" : " by ")
              + one.steps());
    }
    return String.join(", ", said);
  }

  private static String figure(Figure figure, int decimals) {
    if (!figure.known()) {
      return "-";
    }
    String said = String.format(Locale.ROOT, "%." + decimals + "f", figure.get());
    return said.matches("-0(\\.0*)?") ? said.substring(1) : said;
  }

  private static String whole(double value) {
    return Long.toString(Math.round(value));
  }

  private static String number(double value) {
    return value == Math.rint(value)
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%.2f", value);
  }

  private static String cut(@Nullable String text, int width) {
    String said = Objects.requireNonNullElse(text, "");
    return said.length() <= width ? said : said.substring(0, width - 1) + "…";
  }

  private static String wrap(String text) {
    StringBuilder wrapped = new StringBuilder();
    int column = 0;
    for (String word : text.split(" ", -1)) {
      if (column > 0 && column + 1 + word.length() > WIDTH) {
        wrapped.append(System.lineSeparator());
        column = 0;
      }
      if (column > 0) {
        wrapped.append(' ');
        column++;
      }
      wrapped.append(word);
      column += word.length();
    }
    return wrapped.append(System.lineSeparator()).toString();
  }
}

package thinclick.server.words;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PlayerStage;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;

/** A review as a page of plain text under 80 columns: prose first, tables after. */
public final class ReviewPage {
  private static final String UNKNOWN = "-";

  private final Spoken spoken;
  private final Review review;
  private final Speaker speaker;
  private final List<String> lines = new ArrayList<>();
  private final Set<String> reasons = new LinkedHashSet<>();

  private ReviewPage(Spoken spoken, Speaker speaker) {
    this.spoken = spoken;
    this.speaker = speaker;
    review = spoken.review();
  }

  /** The leader's page; every line ends with a line break. */
  public static String of(Spoken spoken, Speaker speaker) {
    ReviewPage page = new ReviewPage(spoken, speaker);
    page.head();
    page.prose();
    page.nextForPlayers();
    page.stages();
    page.players();
    page.foot();
    return page.text();
  }

  /** One player's slip: what is said to them, and their own figures stage by stage. */
  public static String slip(Spoken spoken, String player, Speaker speaker) {
    ReviewPage page = new ReviewPage(spoken, speaker);
    page.slip(player);
    return page.text();
  }

  private String text() {
    return String.join("\n", lines) + "\n";
  }

  private void paragraph(String text) {
    lines.addAll(Table.wrap(text, ""));
  }

  private void head() {
    int bars = bars();
    paragraph(
        speaker.say(
            Said.of(
                review.players().size() == 1 ? "page.headAlone" : "page.head",
                review.title(),
                bars,
                Integer.toString(bars),
                review.meter().toString(),
                Quantity.exact(review.tempo()),
                new Quantity(review.toleranceMillis(), 0, 1))));
    lines.add("");
  }

  private int bars() {
    List<StageReview> stages = review.stages();
    return stages.isEmpty() ? 0 : stages.get(stages.size() - 1).toBar();
  }

  private void prose() {
    paragraph(String.join(" ", spoken.prose(speaker)));
  }

  private void nextForPlayers() {
    // Whose next is the band's has it in the prose already.
    List<Spoken.Slip> own =
        spoken.slips().stream()
            .filter(slip -> slip.next() != null && !slip.next().equals(spoken.next()))
            .toList();
    if (own.isEmpty() || spoken.slips().size() == 1) {
      return;
    }
    lines.add("");
    for (Spoken.Slip slip : own) {
      lines.addAll(Table.wrap(slip.player() + ": " + slip.next() + ".", "  "));
    }
  }

  private void stages() {
    Table table =
        new Table(
            heads(
                "<page.stages.bars",
                "<page.stages.click",
                "page.stages.hold",
                "page.stages.spread",
                "<page.stages.drift"));
    for (int i = 0; i < review.stages().size(); i++) {
      StageReview stage = review.stages().get(i);
      table.add(
          List.of(
              bars(stage),
              spoken.clicks().get(i),
              hold(stage.hold()),
              millis(stage.spreadMillis()),
              drift(stage)));
    }
    lines.add("");
    lines.addAll(table.lines());
  }

  private String drift(StageReview stage) {
    Said drift = DriftWords.of(stage, review.meter());
    return drift == null ? unknown(stage.driftPercent()) : speaker.say(drift);
  }

  private static String bars(StageReview stage) {
    int first = stage.fromBar() + 1;
    return first == stage.toBar() ? Integer.toString(first) : first + "-" + stage.toBar();
  }

  private void players() {
    List<String> heads =
        new ArrayList<>(
            heads(
                "<page.players.player",
                "page.stages.written",
                "page.stages.placed",
                "page.players.outside",
                "page.stages.dropped",
                "page.stages.added",
                "page.stages.lean",
                "page.stages.spread"));
    Said steps = ShiftWords.steps(review.meter(), review.stepsPerBeat());
    heads.add("<" + speaker.say(Said.of("page.players.displaced", steps)));
    Table table = new Table(heads);
    for (PlayerReview player : review.players()) {
      table.add(
          List.of(
              player.standIn() ? player.player() + " *" : player.player(),
              Integer.toString(player.written()),
              Integer.toString(player.placed()),
              Integer.toString(Tally.outside(player)),
              Integer.toString(player.dropped()),
              Integer.toString(player.added()),
              millis(player.leanMillis()),
              millis(player.spreadMillis()),
              displaced(player)));
    }
    lines.add("");
    lines.addAll(table.lines());
  }

  private String displaced(PlayerReview player) {
    Spoken.Slip slip = spoken.slip(player.player());
    if (slip != null && slip.playedAnotherPart()) {
      return speaker.say("page.otherPart");
    }
    List<String> said = new ArrayList<>();
    for (Displacement one : player.displacements()) {
      said.add(
          String.format(Locale.ROOT, "%d-%d: %+d", one.fromBar() + 1, one.toBar(), one.steps()));
    }
    return said.isEmpty() ? "" : player.displaced() + " (" + String.join(", ", said) + ")";
  }

  private void foot() {
    lines.add("");
    String counts = spoken.counts();
    if (counts != null) {
      paragraph(counts);
    }
    paragraph(speaker.say("page.foot"));
    if (review.players().stream().anyMatch(player -> Tally.outside(player) > 0)) {
      paragraph(speaker.say("page.foot.outside"));
    }
    if (review.players().stream().anyMatch(PlayerReview::standIn)) {
      lines.add(speaker.say("page.standIn"));
    }
    reasons.forEach(reason -> paragraph(speaker.say(Said.of("page.unknown", reason))));
  }

  private void slip(String name) {
    Spoken.Slip slip = spoken.slip(name);
    PlayerReview player = review.player(name);
    if (slip == null || player == null) {
      throw new IllegalArgumentException("nobody is called " + name);
    }
    int bars = bars();
    paragraph(
        speaker.say(
            Said.of(
                "slip.head",
                name,
                review.title(),
                bars,
                Integer.toString(bars),
                review.meter().toString(),
                Quantity.exact(review.tempo()))));
    lines.add("");
    paragraph(String.join(" ", slip.says()));
    Table table =
        new Table(
            heads(
                "<page.stages.bars",
                "<page.stages.click",
                "page.stages.written",
                "page.stages.placed",
                "page.stages.dropped",
                "page.stages.added",
                "page.stages.lean",
                "page.stages.spread"));
    for (int i = 0; i < player.stages().size(); i++) {
      PlayerStage stage = player.stages().get(i);
      table.add(
          List.of(
              bars(review.stages().get(i)),
              spoken.clicks().get(i),
              Integer.toString(stage.written()),
              Integer.toString(stage.placed()),
              Integer.toString(stage.dropped()),
              Integer.toString(stage.added()),
              millis(stage.leanMillis()),
              millis(stage.spreadMillis())));
    }
    lines.add("");
    lines.addAll(table.lines());
    lines.add("");
    paragraph(speaker.say("slip.foot"));
    reasons.forEach(reason -> paragraph(speaker.say(Said.of("page.unknown", reason))));
  }

  private List<String> heads(String... keys) {
    List<String> heads = new ArrayList<>();
    for (String key : keys) {
      boolean left = key.startsWith("<");
      heads.add((left ? "<" : "") + speaker.say(left ? key.substring(1) : key));
    }
    return heads;
  }

  /**
   * The figure as far as its interval carries it; a dash where it is not known, explained below.
   */
  private String millis(Figure figure) {
    return figure.known() ? speaker.shown(Quantity.millis(figure)) : unknown(figure);
  }

  /** A share that was counted: its interval costs no digits. */
  private String hold(Figure figure) {
    return figure.known() ? speaker.shown(Quantity.percent(figure.get())) : unknown(figure);
  }

  private String unknown(Figure figure) {
    if (figure.reason() != null) {
      reasons.add(speaker.say("reason." + figure.reason().code()));
    }
    return UNKNOWN;
  }
}

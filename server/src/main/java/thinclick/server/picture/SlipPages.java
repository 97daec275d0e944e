package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Paper;
import thinclick.server.picture.SlipSheet.Column;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PlayerStage;
import thinclick.server.scoring.PositionReview;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import thinclick.server.words.Tally;

/**
 * A page for each pupil to take home: what is said to this one alone, what was held at each stage
 * of the click, the figures, and lines for what the teacher or the pupil writes by hand. Nothing of
 * anybody else's.
 */
public final class SlipPages {
  private static final double TITLE = 4.6;
  private static final double HEADING = 2.9;
  private static final double BODY = 2.7;
  private static final double SMALL = 2.0;
  private static final int NOTE_LINES = 5;

  /** Where nothing is written, or nothing is known. */
  private static final String NOTHING = "\u2013";

  private final Spoken spoken;
  private final Speaker speaker;
  private final SlipSheet sheet;

  private SlipPages(Spoken spoken, Speaker speaker, Paper paper) {
    this.spoken = spoken;
    this.speaker = speaker;
    this.sheet = new SlipSheet(paper);
  }

  /** The pages, in the review's order; a stand-in gets none. */
  public static List<Page> of(Spoken spoken, Speaker speaker, Paper paper) {
    List<Page> pages = new ArrayList<>();
    for (PlayerReview player : spoken.review().players()) {
      if (!player.standIn()) {
        pages.add(new SlipPages(spoken, speaker, paper).page(player));
      }
    }
    return List.copyOf(pages);
  }

  private Page page(PlayerReview player) {
    Review review = spoken.review();
    String what =
        speaker.say(
            Said.of(
                "slip.page.what",
                review.title(),
                review.meter().toString(),
                Quantity.exact(review.tempo())));
    sheet.line(player.player(), Face.SEMIBOLD, TITLE, Ink.FULL);
    sheet.line(what, Face.ITALIC, BODY, Ink.SOFT);
    sheet.down(0.8);
    sheet.rule();
    sheet.down(1.4);
    said(player);
    heading("slip.page.stages");
    sheet.table(stages(player), SMALL * 1.15);
    sheet.down(1);
    sheet.paragraph(speaker.say("slip.foot"), Face.REGULAR, SMALL, Ink.SOFT);
    heading("slip.page.figures");
    figures(player);
    heading("slip.page.notes");
    sheet.blanks(NOTE_LINES);
    sheet.foot(speaker.say("slip.page.care"), SMALL);
    return sheet.page(review.title() + ", " + player.player());
  }

  /** The sentences, what comes next last and strong. */
  private void said(PlayerReview player) {
    Spoken.@Nullable Slip slip = spoken.slip(player.player());
    List<String> says = slip == null ? List.of() : slip.says();
    if (says.isEmpty()) {
      sheet.paragraph(speaker.say("slip.page.nothing"), Face.REGULAR, BODY, Ink.FULL);
    }
    for (int i = 0; i < says.size(); i++) {
      boolean next = i == says.size() - 1 && says.size() > 1;
      sheet.paragraph(says.get(i), next ? Face.SEMIBOLD : Face.REGULAR, BODY, Ink.FULL);
      sheet.down(0.7);
    }
  }

  private void heading(String key) {
    sheet.down(2.6);
    sheet.line(speaker.say(key), Face.SEMIBOLD, HEADING, Ink.FULL);
    sheet.down(0.6);
  }

  private List<Column> stages(PlayerReview player) {
    List<String> bars = new ArrayList<>();
    List<String> clicks = new ArrayList<>();
    List<String> placed = new ArrayList<>();
    List<@Nullable Double> shares = new ArrayList<>();
    List<String> leans = new ArrayList<>();
    List<String> spreads = new ArrayList<>();
    for (int i = 0; i < player.stages().size(); i++) {
      PlayerStage own = player.stages().get(i);
      StageReview stage = spoken.review().stages().get(i);
      int first = stage.fromBar() + 1;
      bars.add(first == stage.toBar() ? Integer.toString(first) : first + "\u2013" + stage.toBar());
      clicks.add(spoken.clicks().get(i));
      placed.add(own.written() == 0 ? NOTHING : of(own.placed(), own.written()));
      shares.add(own.written() == 0 ? null : (Double) ((double) own.placed() / own.written()));
      leans.add(figure(own.leanMillis()));
      spreads.add(figure(own.spreadMillis()));
    }
    return List.of(
        Column.words(speaker.say("page.stages.bars"), bars),
        Column.words(speaker.say("page.stages.click"), clicks),
        Column.numbers(speaker.say("page.stages.placed"), placed),
        Column.shares(shares),
        Column.numbers(speaker.say("page.stages.lean"), leans),
        Column.numbers(speaker.say("page.stages.spread"), spreads));
  }

  private void figures(PlayerReview player) {
    sheet.pair(
        SMALL * 1.15,
        List.of(
            speaker.say("slip.page.placed"),
            of(player.placed(), player.written()),
            speaker.say("slip.page.lean"),
            millis(player.leanMillis())));
    sheet.pair(
        SMALL * 1.15,
        List.of(
            speaker.say("slip.page.onbeat"),
            placed(player.onbeat()),
            speaker.say("slip.page.spread"),
            millis(player.spreadMillis())));
    sheet.pair(
        SMALL * 1.15,
        List.of(
            speaker.say("slip.page.offbeat"),
            placed(player.offbeat()),
            speaker.say("slip.page.dropped"),
            Integer.toString(player.dropped())));
    sheet.pair(
        SMALL * 1.15,
        List.of(
            speaker.say("slip.page.outside"),
            Integer.toString(Tally.outside(player)),
            speaker.say("slip.page.added"),
            Integer.toString(player.added())));
    if (player.displaced() > 0) {
      sheet.pair(
          SMALL * 1.15,
          List.of(speaker.say("slip.page.off"), Integer.toString(player.displaced()), "", ""));
    }
  }

  private String placed(PositionReview position) {
    return position.written() == 0 ? NOTHING : of(position.placed(), position.written());
  }

  private String of(int placed, int written) {
    return speaker.say(Said.of("slip.page.of", placed, written));
  }

  private String figure(Figure figure) {
    return figure.known() ? speaker.shown(Quantity.millis(figure)) : NOTHING;
  }

  private String millis(Figure figure) {
    return figure.known()
        ? speaker.shown(Quantity.millis(figure)) + " ms"
        : speaker.say("slip.page.unknown");
  }
}

package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import thinclick.protocol.json.Check;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Paper;
import thinclick.server.engraving.Place;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PositionReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** A page for each pupil to take home: the own slip and the own figures, nobody else's. */
public final class SlipPages {
  private static final double SPACE_MM = 1.75;
  private static final double MARGIN_MM = 22;
  private static final double TITLE = 4.4;
  private static final double NAME = 3.4;
  private static final double BODY = 2.6;
  private static final double SMALL = 2.0;
  private static final double LEADING = 1.45;

  private final Paper paper;
  private final Speaker speaker;
  private final List<Mark> marks = new ArrayList<>();
  private double y;

  private SlipPages(Paper paper, Speaker speaker) {
    this.paper = paper;
    this.speaker = speaker;
    this.y = MARGIN_MM / SPACE_MM;
  }

  /** The pages, in the review's order; a stand-in gets none. */
  public static List<Page> of(Spoken spoken, Speaker speaker, Paper paper) {
    List<Page> pages = new ArrayList<>();
    for (PlayerReview player : spoken.review().players()) {
      if (!player.standIn()) {
        pages.add(new SlipPages(paper, speaker).page(spoken, player));
      }
    }
    return List.copyOf(pages);
  }

  private Page page(Spoken spoken, PlayerReview player) {
    Review review = spoken.review();
    line(player.player(), Face.SEMIBOLD, TITLE, Ink.FULL);
    line(
        speaker.say(
            Said.of(
                "slip.page.what",
                review.title(),
                review.meter().toString(),
                Check.number(review.tempo()))),
        Face.ITALIC,
        NAME * 0.8,
        Ink.SOFT);
    y += 2;
    Spoken.Slip slip = spoken.slip(player.player());
    List<String> says = slip == null ? List.of() : slip.says();
    if (says.isEmpty()) {
      paragraph(speaker.say("slip.page.nothing"), BODY, Ink.FULL);
    }
    for (String sentence : says) {
      paragraph(sentence, BODY, Ink.FULL);
      y += 0.8;
    }
    y += 1.6;
    rule();
    figure("slip.page.placed", Integer.toString(player.placed()) + " / " + player.written());
    figure("slip.page.onbeat", placed(player.onbeat()));
    figure("slip.page.offbeat", placed(player.offbeat()));
    figure("slip.page.dropped", Integer.toString(player.dropped()));
    figure("slip.page.added", Integer.toString(player.added()));
    figure("slip.page.lean", millis(player.leanMillis()));
    figure("slip.page.spread", millis(player.spreadMillis()));
    rule();
    y = paper.height() / SPACE_MM - MARGIN_MM / SPACE_MM - 4;
    paragraph(speaker.say("slip.page.care"), SMALL, Ink.SOFT);
    return new Page(
        paper.width(), paper.height(), SPACE_MM, review.title() + ", " + player.player(), marks);
  }

  private static String placed(PositionReview position) {
    return position.placed() + " / " + position.written();
  }

  private String millis(Figure figure) {
    if (!figure.known()) {
      return speaker.say("slip.page.unknown");
    }
    return Quantity.millis(figure).shown(Locale.ROOT) + " ms";
  }

  private double left() {
    return MARGIN_MM / SPACE_MM;
  }

  private double width() {
    return (paper.width() - 2 * MARGIN_MM) / SPACE_MM;
  }

  private void line(String text, Face face, double size, Ink ink) {
    y += size;
    marks.add(text(text, face, size, ink, left()));
    y += size * (LEADING - 1);
  }

  private Mark text(String text, Face face, double size, Ink ink, double x) {
    return new Mark.Text(Place.saying(text), ink, text, face, size, x, y);
  }

  private void paragraph(String text, double size, Ink ink) {
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && Face.REGULAR.width(longer, size) > width()) {
        line(line.toString(), Face.REGULAR, size, ink);
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    line(line.toString(), Face.REGULAR, size, ink);
  }

  private void figure(String key, String value) {
    y += BODY;
    marks.add(text(speaker.say(key), Face.REGULAR, BODY, Ink.SOFT, left()));
    double x = left() + width() - Face.REGULAR.width(value, BODY);
    marks.add(text(value, Face.REGULAR, BODY, Ink.FULL, x));
    y += BODY * (LEADING - 1);
  }

  private void rule() {
    y += 0.6;
    marks.add(new Mark.Line(Place.NOWHERE, Ink.RULE, left(), y, left() + width(), y, 0.12, false));
    y += 0.6;
  }
}

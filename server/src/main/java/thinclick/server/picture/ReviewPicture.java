package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Analysis;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * A take's review as a sheet: the prose, a ribbon of drift and spread over the stages, upright
 * columns of dots by metrical position for each player, episodes on a time line.
 */
public final class ReviewPicture {
  private static final double WIDTH = 900;
  private static final double MARGIN = 36;
  private static final double GUTTER = 28;

  /** What is said of the scale to the player whose page it is. */
  static final String OWN_SCALE = "picture.scale.own";

  private ReviewPicture() {}

  /** Draws a review. */
  public static Drawing of(Analysis analysis, Spoken spoken, Speaker speaker) {
    Easel easel = new Easel();
    int bars = Math.max(1, analysis.take().plan().bars());
    double inner = WIDTH - 2 * MARGIN;
    BarScale scale = new BarScale(MARGIN + BarScale.NAMES, inner - BarScale.NAMES, bars);
    double y = MARGIN;
    y = head(easel, analysis, bars, y, speaker);
    y = prose(easel, spoken, inner, y, speaker);
    easel.heading(MARGIN, y + 16, speaker.say("picture.ribbon"));
    Ribbon.draw(easel, analysis, spoken, scale, y + 24, speaker);
    y += 24 + Ribbon.height(analysis);
    easel.heading(MARGIN, y + 16, speaker.say("picture.columns"));
    double width = (inner - GUTTER) / 2;
    DotScale dots = DotScale.of(List.of(analysis));
    List<DotColumns> columns =
        analysis.players().stream()
            .map(one -> new DotColumns(analysis, one, dots, width, true, speaker))
            .toList();
    y = rows(easel, columns, MARGIN, width + GUTTER, y + 26);
    y = key(easel, MARGIN, y, "picture.scale", analysis, columns, speaker) + 22;
    easel.heading(MARGIN, y + 16, speaker.say("picture.episodes"));
    Episodes.draw(easel, analysis, scale, y + 26, speaker);
    y += 26 + Episodes.height(analysis);
    Easel sheet = new Easel();
    sheet.box(0, 0, WIDTH, y + MARGIN, Tint.PAPER);
    easel.items().forEach(sheet::add);
    return new Drawing(
        WIDTH,
        y + MARGIN,
        analysis.take().title(),
        String.join(" ", spoken.prose(speaker)),
        sheet.items());
  }

  private static double head(Easel easel, Analysis analysis, int bars, double y, Speaker speaker) {
    double inner = WIDTH - 2 * MARGIN;
    easel.add(
        new Drawing.Words(
            MARGIN,
            y + 22,
            24,
            Face.SEMIBOLD,
            Anchor.START,
            Easel.cut(analysis.take().title(), 26, inner),
            Tint.INK));
    easel.words(
        MARGIN,
        y + 44,
        Easel.BODY,
        Anchor.START,
        speaker.say(
            Said.of(
                "picture.head",
                bars,
                Integer.toString(bars),
                analysis.take().meter().toString(),
                Quantity.exact(analysis.take().tempo()))),
        Tint.SOFT);
    return y + 56;
  }

  private static double prose(Easel easel, Spoken spoken, double inner, double y, Speaker speaker) {
    double at = y;
    for (String line : Easel.wrap(String.join(" ", spoken.prose(speaker)), Easel.BODY, inner)) {
      at += 20;
      easel.words(MARGIN, at, Easel.BODY, Anchor.START, line, Tint.INK);
    }
    return at + 22;
  }

  /**
   * Two beside each other, what is written above them in as many lines.
   *
   * @param apart from the left edge of one to that of the next
   * @return where they end
   */
  static double rows(Easel easel, List<DotColumns> columns, double left, double apart, double top) {
    double y = top;
    for (int i = 0; i < columns.size(); i += 2) {
      List<DotColumns> row = columns.subList(i, Math.min(i + 2, columns.size()));
      int lines = row.stream().mapToInt(DotColumns::lines).max().orElse(1);
      double high = 0;
      for (int side = 0; side < row.size(); side++) {
        row.get(side).draw(easel, left + side * apart, y, lines);
        high = Math.max(high, row.get(side).height(lines));
      }
      y += high;
    }
    return y;
  }

  /**
   * What the shapes mean, in words; no more of it than there is to be read.
   *
   * @param scale the key of what is said about the scale
   * @return where it ends
   */
  static double key(
      Easel easel,
      double left,
      double y,
      String scale,
      Analysis analysis,
      List<DotColumns> columns,
      Speaker speaker) {
    boolean plotted = columns.stream().anyMatch(DotColumns::plotted);
    List<String> shapes = shapes(analysis, columns);
    if (shapes.isEmpty()) {
      return y;
    }
    double x = left;
    double line = y + 16;
    for (String shape : shapes) {
      switch (shape) {
        case "placed" -> easel.attack(x + 8, line - 4, Tint.INK);
        case "early" -> easel.attack(x + 8, line - 4, Tint.EARLY);
        case "late" -> easel.attack(x + 8, line - 4, Tint.LATE);
        default -> easel.caret(x + 8, line - 1, Tint.INK);
      }
      String words = speaker.say("picture.key." + shape);
      easel.words(x + 20, line, Easel.SMALL, Anchor.START, words, Tint.SOFT);
      x += 20 + Face.REGULAR.width(words, Easel.SMALL) + 24;
    }
    for (Said key : plotted ? scaleKeys(scale, columns) : List.<Said>of()) {
      line += 18;
      easel.words(left, line, Easel.SMALL, Anchor.START, speaker.say(key), Tint.SOFT);
    }
    return line + 4;
  }

  /** Those that are drawn, in the order of the key. */
  private static List<String> shapes(Analysis analysis, List<DotColumns> columns) {
    List<String> shapes = new ArrayList<>();
    add(shapes, "placed", columns.stream().anyMatch(one -> one.draws(Tint.INK)));
    add(shapes, "early", columns.stream().anyMatch(one -> one.draws(Tint.EARLY)));
    add(shapes, "late", columns.stream().anyMatch(one -> one.draws(Tint.LATE)));
    boolean silent = Episodes.anySilent(analysis);
    add(shapes, "dropped", silent);
    return shapes;
  }

  private static void add(List<String> shapes, String shape, boolean drawn) {
    if (drawn) {
      shapes.add(shape);
    }
  }

  /** What is said about the scale; of the lean only where a strip is seen to have moved with it. */
  private static List<Said> scaleKeys(String scale, List<DotColumns> columns) {
    List<Said> keys = new ArrayList<>(List.of(Said.of(scale), Said.of("picture.scale.bars")));
    if (columns.stream().anyMatch(DotColumns::leans)) {
      boolean own = scale.equals(OWN_SCALE);
      keys.add(own ? ownLean(columns.get(0).allowed()) : Said.of("picture.scale.lean"));
    }
    return keys;
  }

  private static Said ownLean(Quantity allowed) {
    String side = allowed.side() < 0 ? "lean.early" : "lean.late";
    return Said.of("picture.scale.ownLean", Said.of(side, allowed.size()));
  }
}

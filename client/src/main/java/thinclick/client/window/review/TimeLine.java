package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.PaintedStrip;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.PictureParts;
import thinclick.server.engraving.Face;

/**
 * Episodes on a time line: a ruled line for each player, bars from left to right, a stretch off the
 * part as a block above the line where it was late and below it where it was early, as in the
 * pictures.
 */
final class TimeLine extends PaintedStrip implements PictureParts {
  private static final double ROW_EMS = 2.0;
  private static final double NAMES_EMS = 7;

  private List<String> players = List.of();
  private List<Episode> episodes = List.of();
  private int bars = 1;

  private final String axisSays;

  /**
   * @param axisSays what the numbers below count
   */
  TimeLine(String axisSays) {
    super(30);
    this.axisSays = axisSays;
  }

  void show(List<String> names, List<Episode> found, int takeBars, String spoken) {
    players = List.copyOf(names);
    episodes = List.copyOf(found);
    bars = Math.max(1, takeBars);
    setAccessibleText(spoken);
    changed();
  }

  @Override
  public List<Part> parts() {
    double row = ROW_EMS * em();
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < players.size(); i++) {
      parts.add(new Part(i * row, (i + 1) * row));
    }
    parts.add(new Part(players.size() * row, heightEms() * em()));
    return parts;
  }

  /** A few rows are read together, with the numbers of their bars. */
  @Override
  public boolean isWhole() {
    return true;
  }

  @Override
  protected double heightEms() {
    return players.size() * ROW_EMS + 1.6;
  }

  @Override
  protected void paint(GraphicsContext pen, double width, double height) {
    if (width < 50) {
      return;
    }
    pen.setTextBaseline(VPos.CENTER);
    double left = Math.floor(NAMES_EMS * em());
    double bar = (width - left - 1) / bars;
    for (int i = 0; i < players.size(); i++) {
      double y = Math.floor((i + 0.5) * ROW_EMS * em()) + 0.5;
      pen.setFill(colour(palette().ink()));
      pen.setFont(Faces.TEXT.at(em()));
      pen.setTextAlign(TextAlignment.LEFT);
      pen.fillText(players.get(i), 0, y, left - em() * 0.5);
      pen.setFill(colour(palette().rule()));
      pen.fillRect(left, y - 0.5, width - left, 1);
      for (Episode episode : episodes) {
        if (episode.player().equals(players.get(i))) {
          episode(pen, episode, left, bar, y);
        }
      }
    }
    axis(pen, left, bar, players.size() * ROW_EMS * em());
  }

  private void episode(GraphicsContext pen, Episode episode, double left, double bar, double y) {
    boolean late = episode.steps() > 0;
    // From the tick of its first bar to that of the first after it, both covered.
    double from = Math.floor(left + episode.fromBar() * bar);
    double wide = Math.floor(left + episode.toBar() * bar) - from + 1;
    double high = Math.rint(ROW_EMS * em() * 0.34);
    pen.setFill(colour(late ? palette().late() : palette().early()));
    pen.fillRect(from, late ? y - 0.5 - high : y + 0.5, wide, high);
    // On the block's side of the line, which would strike it through.
    called(pen, episode, from, from + wide, left, y + (late ? -0.75 : 0.75) * em());
  }

  /**
   * What it is called stands beside it, where there is room; the sentence below says it as well.
   */
  private void called(
      GraphicsContext pen, Episode episode, double from, double to, double left, double y) {
    pen.setFont(Faces.TEXT.at(em() * 0.85));
    double wide = Face.REGULAR.width(episode.called(), em() * 0.85);
    double air = em() * 0.4;
    if (to + air + wide <= getWidth()) {
      pen.fillText(episode.called(), to + air, y);
    } else if (from - air - wide >= left) {
      pen.fillText(episode.called(), from - air - wide, y);
    }
  }

  private void axis(GraphicsContext pen, double left, double bar, double top) {
    int every = bars <= 12 ? 1 : bars <= 32 ? 4 : 8;
    pen.setFill(colour(palette().soft()));
    pen.setFont(Faces.TEXT.at(em() * 0.85));
    pen.setTextAlign(TextAlignment.LEFT);
    pen.fillText(axisSays, 0, top + em() * 0.85, left - em() * 0.5);
    pen.setTextAlign(TextAlignment.CENTER);
    pen.setStroke(colour(palette().rule()));
    for (int number = 0; number <= bars; number++) {
      double x = Math.floor(left + number * bar) + 0.5;
      pen.strokeLine(x, top, x, top + em() * 0.25);
      if (number < bars && number % every == 0) {
        pen.fillText(Integer.toString(number + 1), x + bar / 2, top + em() * 0.85);
      }
    }
  }

  private static Color colour(int colour) {
    return Color.web(Palette.web(colour));
  }
}

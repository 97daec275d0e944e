package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.Node;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.words.Words;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;

/**
 * The score as it stands on the page: as many lines of music as fit, painted once, with small marks
 * laid over them. A line is a staff, or a staff for each of the parts that are read here together.
 * {@link PageTurn} says which lines are in view.
 */
final class ScoreSheet {
  /** What the names before the staves take where there are several, ems of running text. */
  static final double NAME_EMS = 5;

  /** So much lower, pixels, the last bracket may stand once all is put on whole pixels. */
  private static final double ROUNDED = 3;

  private final Words words;
  private final Pane root =
      new Pane() {
        @Override
        public void resize(double width, double height) {
          boolean other = width != getWidth() || height != getHeight();
          super.resize(width, height);
          if (other) {
            layOut();
          }
        }
      };
  private final TurnRule rule = new TurnRule();
  private final SheetParts parts;
  private final PlayedMarks played = new PlayedMarks();
  private final ReadOnlyObjectWrapper<Leaf> leaf = new ReadOnlyObjectWrapper<>(Leaf.NONE);
  private final ReadOnlyDoubleWrapper space = new ReadOnlyDoubleWrapper();
  private final FittedPages fitted;

  private List<Integer> staves = List.of();
  private List<ScoreLine> shown = List.of();
  private LaidPages pages = LaidPages.NONE;
  private List<OtherLine> others = List.of();
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private DevicePixels pixels = DevicePixels.primary();
  private int bar = -1;

  /** Where no bar sounds, a bar of the page in view, which stays in view at another size. */
  private int resting;

  /**
   * @param readers for each staff who reads it, one or more, each with a lane of their own for
   *     marks
   * @param fitted what is known of how large their music is
   */
  ScoreSheet(List<List<String>> readers, FittedPages fitted, Words words) {
    this.fitted = fitted;
    parts = new SheetParts(readers);
    this.words = words;
    root.setId("score");
    root.setMinSize(0, 0);
    DevicePixels.follow(root, this::on);
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(root.widthProperty());
    clip.heightProperty().bind(root.heightProperty().add(ROUNDED));
    root.setClip(clip);
  }

  Node root() {
    return root;
  }

  /** What the names before the staves take of a page's width, pixels. */
  static double margin(int staves, double textScale) {
    return staves > 1 ? NAME_EMS * Look.USUAL_TEXT * textScale : 0;
  }

  /** Shows another part on a staff, with lines for the others; null shows nothing. */
  void show(int staff, @Nullable WrittenPart now, List<OtherLine> fellows) {
    parts.write(staff, now);
    others = fellows;
    bar = -1;
    resting = 0;
    played.forget(staff);
    layOut();
  }

  /** The same part under another click plan; the marks stay. */
  void replan(int staff, WrittenPart now) {
    parts.write(staff, now);
    layOut();
  }

  /**
   * Pages that are turned to from this one, and cut as it is where that is possible.
   *
   * @param together where a part stands alone, the pages on which all stand: its music is no
   *     smaller than there
   */
  void beside(List<Beside> pages, List<Beside> together) {
    if (parts.beside(pages, together)) {
      layOut();
    }
  }

  void dress(Palette wanted, double textScale) {
    if (wanted != palette || textScale != scale) {
      palette = wanted;
      scale = textScale;
      layOut();
    }
  }

  private void on(DevicePixels now) {
    if (!now.equals(pixels)) {
      pixels = now;
      layOut();
    }
  }

  /** The bar that sounds, from 0; -1 before the first. */
  void bar(int now) {
    if (now != bar || now < 0) {
      bar = now;
      resting = Math.max(0, now);
      place();
    }
  }

  /** No bar sounds any more; the page in view stays, to be looked at. */
  void rest() {
    if (bar >= 0) {
      bar = -1;
      place();
    }
  }

  /** Turns over so many pages; nothing while a bar sounds, which turns them itself. */
  void leaf(int by) {
    if (bar < 0 && !pages.isEmpty()) {
      resting = pages.leafed(leaf.get().page(), by);
      place();
    }
  }

  /** Which page is in view. */
  ReadOnlyObjectProperty<Leaf> leafProperty() {
    return leaf.getReadOnlyProperty();
  }

  /** A staff space of the music in view, pixels; 0 where nothing is dealt. */
  ReadOnlyDoubleProperty spaceProperty() {
    return space.getReadOnlyProperty();
  }

  /** A player's marks of a bar that is over. */
  void marks(int staff, int lane, int ofBar, List<BarMark> made) {
    played.mark(staff, lane, ofBar, made);
    pages
        .staff(staves.indexOf(staff))
        .filter(line -> line.has(ofBar))
        .forEach(line -> line.marks(lane, ofBar, made));
  }

  /** What was heard of the others in a bar that is over, by their names. */
  void heard(int ofBar, Map<String, List<BarMark>> others) {
    if (played.hear(ofBar, others)) {
      pages.staff(0).filter(line -> line.has(ofBar)).forEach(line -> line.heard(ofBar, others));
    }
  }

  /** Takes a player's marks away, and with the first one's what was heard of the others. */
  void clearMarks(int staff, int lane) {
    boolean first = staff == 0 && lane == 0;
    played.forget(staff, lane, first);
    pages.staff(staves.indexOf(staff)).forEach(line -> line.clearMarks(lane, first));
  }

  /** The lines of music that are on the page, from above. */
  List<ScoreLine> shown() {
    return shown;
  }

  private void layOut() {
    root.getChildren().clear();
    staves = parts.agreeing();
    double margin = pixels.nearest(margin(parts.staves(), scale));
    if (staves.isEmpty() || root.getWidth() < 50 + margin || root.getHeight() < 50) {
      pages = LaidPages.NONE;
      leaf.set(Leaf.NONE);
      space.set(0);
      shown = List.of();
      return;
    }
    double scoreMargin = pixels.nearest(margin(parts.scoreStaves(), scale));
    FittedPages.Fitted now =
        fitted.fit(
            parts.own(staves),
            parts.beside(),
            page(margin, others.size()),
            parts.score(),
            page(scoreMargin, 0));
    SheetFit fit = now.fit();
    space.set(fit.space());
    StaffPlaces places = StaffPlaces.of(fit, now.lanes(), root.getHeight(), pixels);
    List<ScoreLine> lines = new ArrayList<>();
    for (List<StaffSystem> systems : fit.lines()) {
      StaffPlaces.Line place = places.lines().get(lines.size() % places.lines().size());
      List<StaffSystem> own = systems.subList(now.from(), now.from() + staves.size());
      lines.add(line(own, fit, place, places.air(), margin));
    }
    pages = new LaidPages(lines, places, fit.held(), fit.others() > 0);
    place();
  }

  private SheetPage page(double margin, int fellows) {
    return new SheetPage(root.getWidth() - margin, root.getHeight(), scale, List.of(), fellows);
  }

  /**
   * A line whose staves stand where those of all others do, as far as what is above them allows.
   */
  private ScoreLine line(
      List<StaffSystem> systems, SheetFit fit, StaffPlaces.Line place, double air, double margin) {
    List<SystemView> views = new ArrayList<>();
    List<Double> tops = new ArrayList<>();
    double free = -air / 2;
    for (int at = 0; at < systems.size(); at++) {
      int staff = staves.get(at);
      WrittenPart part = parts.part(staff);
      if (part == null) {
        continue;
      }
      SystemView view =
          new SystemView(
              systems.get(at),
              part,
              parts.readers(staff),
              others.subList(0, Math.min(others.size(), fit.others())),
              palette,
              fit.space(),
              TitleSize.pixels(scale),
              pixels);
      double top = top(view, free, place.middles().get(at));
      tops.add(top);
      free = top + view.lowered() + view.height();
      played.show(view, staff, views.isEmpty());
      views.add(view);
    }
    List<String> names =
        staves.stream().map(staff -> String.join("\n", parts.readers(staff))).toList();
    return new ScoreLine(views, tops, names, margin, palette);
  }

  /** Where a staff begins whose lines as they are drawn stand on the same pixels on every page. */
  private double top(SystemView view, double free, double middle) {
    double wanted = pixels.nearest(middle - 2 * view.space()) - view.staffTop();
    return wanted + view.lowered() < free - 1 ? pixels.nearest(free) : wanted;
  }

  /** Puts the lines that belong on the page into its places. */
  private void place() {
    if (pages.isEmpty()) {
      return;
    }
    PageTurn turn = pages.turn(bar, resting);
    List<ScoreLine> now = new ArrayList<>();
    List<Node> nodes = new ArrayList<>();
    for (int place = 0; place < pages.count(); place++) {
      int at = turn.lines().get(place);
      if (at == PageTurn.NOTHING) {
        continue;
      }
      ScoreLine line = pages.line(at);
      line.root().setLayoutY(pages.top(place, at));
      line.staves().forEach(staff -> staff.bar(bar));
      now.add(line);
      nodes.add(line.root());
    }
    shown = now;
    nodes.add(rule.root());
    if (turn.turnedAbove() == 0) {
      rule.hide();
    } else {
      markTurn(turn);
    }
    if (!root.getChildren().equals(nodes)) {
      root.getChildren().setAll(nodes);
    }
    leaf.set(pages.leaf(resting, turn));
  }

  private void markTurn(PageTurn turn) {
    int at = turn.turnedAbove();
    List<Integer> old = turn.lines().subList(at, pages.count());
    int last = turn.lines().get(at - 1);
    ScoreLine above = pages.line(last);
    ScoreLine below = pages.line(old.get(0));
    int from = below.bars().firstBar();
    int to = pages.line(old.get(old.size() - 1)).bars().endBar();
    String says =
        pages.plays(old, bar)
            ? words.say("stand.turn.above", shown.get(0).bars().firstBar() + 1)
            : words.say("stand.turn.over", from + 1, to, Math.min(3, to - from));
    rule.show(
        new TurnRule.Said(says, pages.reminds(old.get(0)), below.firstX()),
        new TurnRule.Gap(
            pages.top(at - 1, last) + above.foot(),
            pages.top(at, old.get(0)) + below.head(),
            SheetFit.GAP_SPACES * space.get() + pages.air(),
            root.getWidth()),
        space.get(),
        palette,
        pixels);
  }
}

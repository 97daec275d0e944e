package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.Collections;
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

  /**
   * Which page is in view.
   *
   * @param page from 0
   * @param pages how many there are; 0 where nothing is dealt
   * @param firstBar the first bar on it, from 0
   * @param endBar the first bar after it, from 0
   * @param bars how many the part has
   * @param keepsOver whether a bar that is over stays in view, so that its marks are seen at once
   * @param withOthers whether lines for other players stand below the part
   */
  record Leaf(
      int page,
      int pages,
      int firstBar,
      int endBar,
      int bars,
      boolean keepsOver,
      boolean withOthers) {
    /** Nothing is dealt. */
    static final Leaf NONE = new Leaf(0, 0, 0, 0, 0, true, false);

    boolean last() {
      return page == pages - 1;
    }
  }

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
  private final List<List<String>> readers;
  private final List<@Nullable WrittenPart> parts;
  private final PlayedMarks played = new PlayedMarks();
  private final ReadOnlyObjectWrapper<Leaf> leaf = new ReadOnlyObjectWrapper<>(Leaf.NONE);
  private final ReadOnlyDoubleWrapper space = new ReadOnlyDoubleWrapper();
  private final List<ScoreLine> lines = new ArrayList<>();
  private final FittedPages pages = new FittedPages();

  private List<Integer> staves = List.of();
  private List<ScoreLine> shown = List.of();
  private StaffPlaces places = StaffPlaces.NONE;
  private List<OtherLine> others = List.of();
  private List<Beside> beside = List.of();
  private List<Beside> score = List.of();
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private DevicePixels pixels = DevicePixels.primary();
  private int bar = -1;
  private boolean keepsOver = true;
  private boolean withOthers;

  /** Where no bar sounds, a bar of the page in view, which stays in view at another size. */
  private int resting;

  /**
   * @param readers for each staff who reads it, one or more, each with a lane of their own for
   *     marks
   */
  ScoreSheet(List<List<String>> readers, Words words) {
    this.readers = readers.stream().map(List::copyOf).toList();
    this.words = words;
    parts = new ArrayList<>(Collections.nCopies(readers.size(), null));
    root.setId("score");
    root.setMinSize(0, 0);
    DevicePixels.follow(root, this::on);
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(root.widthProperty());
    clip.heightProperty().bind(root.heightProperty());
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
    parts.set(staff, now);
    others = fellows;
    bar = -1;
    resting = 0;
    played.forget(staff);
    layOut();
  }

  /** The same part under another click plan; the marks stay. */
  void replan(int staff, WrittenPart now) {
    parts.set(staff, now);
    layOut();
  }

  /**
   * Pages that are turned to from this one, and cut as it is where that is possible.
   *
   * @param together where a part stands alone, the pages on which all stand: its music is no
   *     smaller than there
   */
  void beside(List<Beside> pages, List<Beside> together) {
    if (!pages.equals(beside) || !together.equals(score)) {
      beside = pages;
      score = together;
      layOut();
    }
  }

  void dress(Palette wanted, double textScale) {
    palette = wanted;
    scale = textScale;
    layOut();
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
    if (bar < 0 && !lines.isEmpty()) {
      int count = places.lines().size();
      int page = PageTurn.leafed(bars(), count, leaf.get().page(), by);
      resting = PageTurn.firstPlayed(bars(), page * count);
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
    int at = staves.indexOf(staff);
    for (ScoreLine line : lines) {
      if (at >= 0 && line.staves().get(at).has(ofBar)) {
        line.staves().get(at).marks(lane, ofBar, made);
      }
    }
  }

  /** What was heard of the others in a bar that is over, by their names. */
  void heard(int ofBar, Map<String, List<BarMark>> others) {
    boolean other = played.hear(ofBar, others);
    for (ScoreLine line : lines) {
      SystemView first = line.staves().get(0);
      if (other && first.has(ofBar)) {
        first.heard(ofBar, others);
      }
    }
  }

  /** Takes a player's marks away, and with the first one's what was heard of the others. */
  void clearMarks(int staff, int lane) {
    boolean first = staff == 0 && lane == 0;
    played.forget(staff, lane, first);
    int at = staves.indexOf(staff);
    for (ScoreLine line : lines) {
      if (at >= 0) {
        line.staves().get(at).clearMarks(lane, first);
      }
    }
  }

  /** The lines of music that are on the page, from above. */
  List<ScoreLine> shown() {
    return shown;
  }

  private void layOut() {
    lines.clear();
    root.getChildren().clear();
    staves = agreeing();
    double margin = pixels.nearest(margin(staves(), scale));
    if (staves.isEmpty() || root.getWidth() < 50 + margin || root.getHeight() < 50) {
      leaf.set(Leaf.NONE);
      space.set(0);
      shown = List.of();
      return;
    }
    double scoreMargin = pixels.nearest(margin(staves(score), scale));
    FittedPages.Fitted fitted =
        pages.fit(own(), beside, page(margin, others.size()), score, page(scoreMargin, 0));
    SheetFit fit = fitted.fit();
    space.set(fit.space());
    places = StaffPlaces.of(fit, fitted.lanes(), root.getHeight(), pixels);
    for (List<StaffSystem> systems : fit.lines()) {
      List<Double> middles = usual(lines.size()).middles();
      lines.add(line(systems.subList(0, staves.size()), middles, fit, margin));
    }
    withOthers = fit.others() > 0;
    keepsOver = PageTurn.keepsOver(bars(), places.lines().size());
    place();
  }

  private SheetFit.Page page(double margin, int fellows) {
    return new SheetFit.Page(root.getWidth() - margin, root.getHeight(), scale, List.of(), fellows);
  }

  /** How many staves stand on this page, or on one that is turned to from it if there are more. */
  private int staves() {
    return Math.max(readers.size(), staves(beside));
  }

  private static int staves(List<Beside> pages) {
    return pages.stream().mapToInt(page -> page.parts().size()).max().orElse(0);
  }

  private Beside own() {
    List<WrittenPart> written = new ArrayList<>();
    for (int staff : staves) {
      WrittenPart part = parts.get(staff);
      if (part != null) {
        written.add(part);
      }
    }
    return new Beside(written, staves.stream().map(staff -> readers.get(staff).size()).toList());
  }

  /** The staves whose parts are of the same bars as the first that is dealt. */
  private List<Integer> agreeing() {
    List<Integer> agree = new ArrayList<>();
    for (int staff = 0; staff < parts.size(); staff++) {
      WrittenPart part = parts.get(staff);
      WrittenPart first = agree.isEmpty() ? part : parts.get(agree.get(0));
      if (part != null && first != null && DealtPart.sameBars(first, part)) {
        agree.add(staff);
      }
    }
    return agree;
  }

  /**
   * A line whose staves stand where those of all others do, as far as what is above them allows.
   */
  private ScoreLine line(
      List<StaffSystem> systems, List<Double> middles, SheetFit fit, double margin) {
    List<SystemView> views = new ArrayList<>();
    List<Double> tops = new ArrayList<>();
    double free = -places.air() / 2;
    for (int at = 0; at < systems.size(); at++) {
      int staff = staves.get(at);
      WrittenPart part = parts.get(staff);
      if (part == null) {
        continue;
      }
      SystemView view =
          new SystemView(
              systems.get(at),
              part,
              readers.get(staff),
              others.subList(0, Math.min(others.size(), fit.others())),
              palette,
              fit.space(),
              pixels);
      double top = top(view, free, middles.get(at));
      tops.add(top);
      free = top + view.height();
      played.show(view, staff, views.isEmpty());
      views.add(view);
    }
    List<String> names =
        staves.stream().map(staff -> String.join("\n", readers.get(staff))).toList();
    return new ScoreLine(views, tops, names, margin, palette);
  }

  /** Where a staff begins whose lines as they are drawn stand on the same pixels on every page. */
  private double top(SystemView view, double free, double middle) {
    double wanted = pixels.nearest(middle - 2 * view.space()) - view.staffTop();
    return wanted < free - 1 ? pixels.nearest(free) : wanted;
  }

  private List<PageTurn.Line> bars() {
    return lines.stream().map(ScoreLine::bars).toList();
  }

  /** Puts the lines that belong on the page into its places. */
  private void place() {
    if (lines.isEmpty()) {
      return;
    }
    int count = places.lines().size();
    List<PageTurn.Line> bars = bars();
    int page = PageTurn.current(bars, resting) / count;
    PageTurn turn =
        bar < 0 ? PageTurn.page(lines.size(), count, page) : PageTurn.at(bars, count, bar);
    List<ScoreLine> now = new ArrayList<>();
    List<Node> nodes = new ArrayList<>();
    for (int place = 0; place < count; place++) {
      int at = turn.lines().get(place);
      if (at == PageTurn.NOTHING) {
        continue;
      }
      ScoreLine line = lines.get(at);
      line.root().setLayoutY(top(place, at));
      line.staves().forEach(staff -> staff.bar(bar));
      now.add(line);
      nodes.add(line.root());
    }
    shown = now;
    nodes.add(rule.root());
    markTurn(turn, bars);
    if (!root.getChildren().equals(nodes)) {
      root.getChildren().setAll(nodes);
    }
    leaf.set(leaf(page, turn));
  }

  /** The place in which a line is read. */
  private StaffPlaces.Line usual(int line) {
    return places.lines().get(line % places.lines().size());
  }

  /** Where a line begins in a place, so that its staves stand where those do that are read there. */
  private double top(int place, int line) {
    StaffPlaces.Line here = places.lines().get(place);
    return here.top() + here.middles().get(0) - usual(line).middles().get(0);
  }

  /**
   * In order where no bar sounds: from the first bar of the upper line to the last of the lower.
   */
  private Leaf leaf(int page, PageTurn turn) {
    int count = places.lines().size();
    List<PageTurn.Line> inView =
        turn.lines().stream()
            .filter(line -> line != PageTurn.NOTHING)
            .map(line -> lines.get(line).bars())
            .toList();
    return new Leaf(
        page,
        PageTurn.pages(lines.size(), count),
        inView.get(0).firstBar(),
        inView.get(inView.size() - 1).endBar(),
        lines.get(lines.size() - 1).bars().endBar(),
        keepsOver,
        withOthers);
  }

  private void markTurn(PageTurn turn, List<PageTurn.Line> bars) {
    if (turn.turnedAbove() == 0) {
      rule.hide();
      return;
    }
    List<Integer> old = turn.lines().subList(turn.turnedAbove(), places.lines().size());
    ScoreLine below = lines.get(old.get(0));
    int firstBar = below.bars().firstBar();
    int endBar = bars.get(old.get(old.size() - 1)).endBar();
    String says =
        old.contains(PageTurn.current(bars, bar))
            ? words.say("stand.turn.above", bars.get(turn.lines().get(0)).firstBar() + 1)
            : words.say("stand.turn.over", firstBar + 1, endBar, Math.min(3, endBar - firstBar));
    double space = below.staves().get(0).space();
    int at = turn.turnedAbove();
    ScoreLine above = lines.get(turn.lines().get(at - 1));
    double from = top(at - 1, turn.lines().get(at - 1)) + above.foot();
    double to = top(at, old.get(0)) + below.head();
    double free = SheetFit.GAP_SPACES * space + places.air();
    rule.show(says, from, to, free, root.getWidth(), space, palette, pixels);
  }
}

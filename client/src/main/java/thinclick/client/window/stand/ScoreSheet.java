package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;

/**
 * The score as it stands on the page: as many lines of music as fit, painted once, with small marks
 * laid over them. A line that is over stays until the one after it has begun, so that its marks can
 * be read; then the next unseen line takes its place, well before it is needed.
 */
final class ScoreSheet {
  private record LaneBar(int lane, int bar) {}

  private final Pane root = new Pane();
  private final List<SystemView> systems = new ArrayList<>();
  private final List<String> readers;
  private final boolean click;
  private final Map<LaneBar, List<BarMark>> marks = new HashMap<>();
  private final Map<Integer, Map<String, List<Double>>> heard = new HashMap<>();

  private @Nullable WrittenPart part;
  private List<OtherLine> others = List.of();
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private int bar = -1;

  /**
   * @param readers who read it, one or more; each has a lane of their own for marks
   * @param click false where the click stands above another part of the page
   */
  ScoreSheet(List<String> readers, boolean click) {
    this.readers = List.copyOf(readers);
    this.click = click;
    root.setMinSize(0, 0);
    root.widthProperty().addListener(any -> layOut());
    root.heightProperty().addListener(any -> layOut());
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(root.widthProperty());
    clip.heightProperty().bind(root.heightProperty());
    root.setClip(clip);
  }

  Node root() {
    return root;
  }

  /** Shows a part with a line for each of the others; null shows nothing. */
  void show(@Nullable WrittenPart now, List<OtherLine> fellows) {
    part = now;
    others = fellows;
    bar = -1;
    marks.clear();
    heard.clear();
    layOut();
  }

  /** The same part with other lines beside it; the bar that sounds and the marks stay. */
  void beside(List<OtherLine> fellows) {
    others = fellows;
    layOut();
  }

  /** The same part under another click plan; the marks stay. */
  void replan(WrittenPart now) {
    part = now;
    layOut();
  }

  void dress(Palette wanted, double textScale) {
    palette = wanted;
    scale = textScale;
    layOut();
  }

  /** The bar that sounds, from 0; -1 for none. */
  void bar(int now) {
    if (now != bar) {
      bar = now;
      place();
    }
  }

  /** A player's marks of a bar that is over. */
  void marks(int lane, int ofBar, List<BarMark> made) {
    marks.put(new LaneBar(lane, ofBar), made);
    for (SystemView system : systems) {
      if (system.has(ofBar)) {
        system.marks(lane, ofBar, made);
      }
    }
  }

  /** What was heard of the others in a bar that is over, in steps from bar 1. */
  void heard(int ofBar, Map<String, List<Double>> played) {
    heard.put(ofBar, played);
    for (SystemView system : systems) {
      if (system.has(ofBar)) {
        system.heard(ofBar, played);
      }
    }
  }

  /** Takes a player's marks away, and with the first one's what was heard of the others. */
  void clearMarks(int lane) {
    marks.keySet().removeIf(at -> at.lane() == lane);
    if (lane == 0) {
      heard.clear();
    }
    systems.forEach(system -> system.clearMarks(lane));
  }

  /** The lines of music that are on the page. */
  List<SystemView> shown() {
    return systems.stream().filter(SystemView::onPage).toList();
  }

  private void layOut() {
    systems.clear();
    root.getChildren().clear();
    WrittenPart now = part;
    if (now == null || root.getWidth() < 50 || root.getHeight() < 50) {
      return;
    }
    SheetFit fit =
        SheetFit.of(
            now,
            new SheetFit.Space(
                root.getWidth(), root.getHeight(), scale, readers.size(), others.size(), click));
    for (StaffSystem system : fit.systems()) {
      SystemView view =
          new SystemView(
              system, now, readers, others.subList(0, fit.others()), palette, fit.space());
      marks.forEach(
          (at, made) -> {
            if (view.has(at.bar())) {
              view.marks(at.lane(), at.bar(), made);
            }
          });
      heard.forEach(
          (ofBar, played) -> {
            if (view.has(ofBar)) {
              view.heard(ofBar, played);
            }
          });
      systems.add(view);
    }
    place();
  }

  /** Puts the lines that belong on the page into its places. */
  private void place() {
    if (systems.isEmpty() || root.getHeight() < 1) {
      return;
    }
    double tallest = 0;
    double gap = 0;
    for (SystemView system : systems) {
      tallest = Math.max(tallest, system.height());
      gap = system.space() * SheetFit.GAP_SPACES;
    }
    int slots = (int) Math.max(1, Math.floor((root.getHeight() + gap) / (tallest + gap)));
    int used = Math.min(slots, systems.size());
    double top = Math.max(0, (root.getHeight() - used * (tallest + gap) + gap) / 2);
    int current = current();
    int first = Math.max(0, Math.min(current - kept(current, slots), systems.size() - slots));
    List<Node> shown = new ArrayList<>();
    for (int i = 0; i < systems.size(); i++) {
      SystemView system = systems.get(i);
      boolean onPage = i >= first && i < first + slots;
      system.onPage(onPage);
      if (onPage) {
        double above = top + (i % slots) * (tallest + gap);
        system.root().setLayoutY(above + tallest - system.height());
        system.bar(bar);
        shown.add(system.root());
      }
    }
    if (!root.getChildren().equals(shown)) {
      root.getChildren().setAll(shown);
    }
  }

  /**
   * How many lines that are over stay: one, so that its last marks can be read. Of two places it
   * leaves its own after a bar, so that the next line stands there before it is needed.
   */
  private int kept(int current, int slots) {
    StaffSystem line = systems.get(current).system();
    boolean justBegun = line.bars() > 1 && bar <= line.firstBar();
    return slots > 2 || (slots == 2 && justBegun) ? 1 : 0;
  }

  private int current() {
    for (int i = systems.size() - 1;
        i >= 0;
        i--) { // of two that have it the later shows what follows
      if (systems.get(i).has(bar)) {
        return i;
      }
    }
    return bar < 0 ? 0 : systems.size() - 1;
  }
}

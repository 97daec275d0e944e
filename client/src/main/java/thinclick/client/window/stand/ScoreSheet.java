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
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;

/**
 * The score as it stands on the page: as many lines of music as fit, painted once, with small marks
 * laid over them. A line that is over stays until the one after it has begun, so that its marks can
 * be read; then the next unseen line takes its place, well before it is needed.
 */
final class ScoreSheet {
  /** A staff space of usual size, read from a metre away, pixels. */
  static final double USUAL_SPACE = 12;

  static final double LEAST_SPACE = 8;
  static final double MOST_SPACE = 28;

  /** So much smaller a staff may become to keep a period's bars in one line. */
  private static final double GIVE = 0.75;

  /** Where not even one bar fits otherwise. */
  private static final double SMALLEST_SPACE = 3;

  private static final double GAP_SPACES = 1.2;

  private final Pane root = new Pane();
  private final List<SystemView> systems = new ArrayList<>();
  private final Map<Integer, List<BarMark>> marks = new HashMap<>();
  private final Map<Integer, Map<String, List<Double>>> heard = new HashMap<>();

  private @Nullable WrittenPart part;
  private List<OtherLine> others = List.of();
  private List<OtherLine> beside = List.of();
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private int bar = -1;

  ScoreSheet() {
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

  /** The marks of a bar that is over. */
  void marks(int ofBar, List<BarMark> made) {
    marks.put(ofBar, made);
    for (SystemView system : systems) {
      if (system.has(ofBar)) {
        system.marks(ofBar, made);
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

  void clearMarks() {
    marks.clear();
    heard.clear();
    systems.forEach(SystemView::clearMarks);
  }

  /** The lines of music that are on the page. */
  List<SystemView> shown() {
    return systems.stream().filter(SystemView::onPage).toList();
  }

  private void layOut() {
    systems.clear();
    root.getChildren().clear();
    WrittenPart now = part;
    double width = root.getWidth();
    if (now == null || width < 50 || root.getHeight() < 50) {
      return;
    }
    double wanted = Math.max(LEAST_SPACE, Math.min(MOST_SPACE, USUAL_SPACE * scale));
    double high = root.getHeight() / SystemView.usualSpaces();
    wanted = Math.max(SMALLEST_SPACE, Math.min(wanted, high));
    int bars = Reading.barsPerSystem(now);
    Reading reading = DealtPart.reading(now, bars);
    double narrowest = Engraver.narrowest(reading.part(), reading.plans());
    while (bars > 1 && narrowest * Math.max(Math.min(wanted, LEAST_SPACE), wanted * GIVE) > width) {
      bars = bars == 3 ? 1 : bars / 2;
      reading = DealtPart.reading(now, bars);
      narrowest = Engraver.narrowest(reading.part(), reading.plans());
    }
    double space = Math.max(SMALLEST_SPACE, Math.min(wanted, width / narrowest));
    beside = others;
    List<StaffSystem> laid = systems(reading, width / space);
    if (laid.size() > 1) {
      // Two lines, so that the next is read before it is needed; the others' lines give way first.
      double two = (root.getHeight() - space * GAP_SPACES) / 2 - 1;
      while (!beside.isEmpty() && tallest(laid) * LEAST_SPACE > two) {
        beside = beside.subList(0, beside.size() - 1);
      }
      // Smaller music is laid out anew, and may then be a little higher in its own spaces.
      while (scale <= 1 && space > LEAST_SPACE && tallest(laid) * space > two) {
        space = Math.max(LEAST_SPACE, Math.min(space * 0.98, two / tallest(laid)));
        laid = systems(reading, width / space);
      }
    }
    if (laid.size() > 1 && slots(laid, space) == 1) {
      reading = lookingAhead(now, width / wanted);
      narrowest = Engraver.narrowest(reading.part(), reading.plans());
      space = Math.max(SMALLEST_SPACE, Math.min(wanted, width / narrowest));
      laid = systems(reading, width / space);
    }
    // One line at least must be seen whole, with its marks.
    while (space > SMALLEST_SPACE && tallest(laid) * space > root.getHeight()) {
      double most = root.getHeight() / tallest(laid);
      space = Math.max(SMALLEST_SPACE, Math.min(space * 0.98, most));
      laid = systems(reading, width / space);
    }
    for (StaffSystem system : laid) {
      SystemView view = new SystemView(system, now, beside, palette, space);
      marks.forEach(
          (ofBar, made) -> {
            if (view.has(ofBar)) {
              view.marks(ofBar, made);
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

  /** How many lines fit on the page. */
  private int slots(List<StaffSystem> laid, double space) {
    double gap = space * GAP_SPACES;
    return (int) Math.max(1, Math.floor((root.getHeight() + gap) / (tallest(laid) * space + gap)));
  }

  /**
   * Where one line fits, its last bar is the first of the line after it, so that what comes next is
   * always in view; as many bars as that leaves room for.
   */
  private static Reading lookingAhead(WrittenPart part, double spaces) {
    Reading ahead = DealtPart.lookingAhead(part, 1);
    for (int bars = Reading.MOST_BARS - 1; bars > 1; bars--) {
      Reading wider = DealtPart.lookingAhead(part, bars);
      if (Engraver.narrowest(wider.part(), wider.plans()) <= spaces) {
        return wider;
      }
    }
    return ahead;
  }

  private static List<StaffSystem> systems(Reading reading, double width) {
    return Engraver.systems(reading.part(), reading.plans(), width);
  }

  private double tallest(List<StaffSystem> laid) {
    return laid.stream()
        .mapToDouble(system -> SystemView.spaces(system, beside.size()))
        .max()
        .orElse(1);
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
      gap = system.space() * GAP_SPACES;
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

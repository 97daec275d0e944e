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
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.engraving.SystemPlan;

/**
 * The score as it stands on the page: as many lines of music as fit, painted once, with small marks
 * laid over them. A line that is over stays until the one after it has begun, so that its marks can
 * be read; then the next unseen line takes its place, well before it is needed.
 */
final class ScoreSheet {
  private static final double USUAL_SPACE = 9;
  private static final double LEAST_SPACE = 6;
  private static final double MOST_SPACE = 28;
  private static final double GAP_SPACES = 1.2;

  private final Pane root = new Pane();
  private final List<SystemView> systems = new ArrayList<>();
  private final Map<Integer, List<BarMark>> marks = new HashMap<>();

  private @Nullable Dealt dealt;
  private @Nullable Part own;
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

  /** Shows what was dealt; null shows nothing. */
  void show(@Nullable Dealt now, @Nullable Part ownPart) {
    dealt = now;
    own = ownPart;
    bar = -1;
    marks.clear();
    layOut();
  }

  /** The same part under another click plan; the marks stay. */
  void replan(Dealt now) {
    dealt = now;
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

  void clearMarks() {
    marks.clear();
    systems.forEach(SystemView::clearMarks);
  }

  private void layOut() {
    systems.clear();
    root.getChildren().clear();
    Dealt now = dealt;
    if (now == null || root.getWidth() < 50 || root.getHeight() < 50) {
      return;
    }
    StaffPart part = DealtPart.staff(now, own);
    int barsPerSystem = 4;
    List<SystemPlan> plans = DealtPart.systems(now, barsPerSystem);
    double wanted = Math.min(MOST_SPACE, USUAL_SPACE * scale);
    while (barsPerSystem > 1
        && Engraver.narrowest(part, plans) * Math.max(LEAST_SPACE, wanted * 0.8)
            > root.getWidth()) {
      barsPerSystem /= 2;
      plans = DealtPart.systems(now, barsPerSystem);
    }
    double narrowest = Engraver.narrowest(part, plans);
    double space = Math.max(LEAST_SPACE, Math.min(wanted, root.getWidth() / narrowest));
    List<StaffSystem> laid = Engraver.systems(part, plans, root.getWidth() / space);
    double tallest = laid.stream().mapToDouble(SystemView::spaces).max().orElse(1);
    double most = root.getHeight() / tallest;
    if (space > most) { // one line at least must be seen whole, with its marks
      space = Math.max(LEAST_SPACE, most);
      laid = Engraver.systems(part, plans, root.getWidth() / space);
    }
    for (StaffSystem system : laid) {
      SystemView view = new SystemView(system, part.stepsPerBar(), palette, space);
      marks.forEach(
          (ofBar, made) -> {
            if (view.has(ofBar)) {
              view.marks(ofBar, made);
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
      gap = system.space() * GAP_SPACES;
    }
    int slots = (int) Math.max(1, Math.floor((root.getHeight() + gap) / (tallest + gap)));
    int current = current();
    int first = systems.size() <= slots ? 0 : Math.max(0, slots > 1 ? current - 1 : current);
    List<Node> shown = new ArrayList<>();
    for (int i = first; i < Math.min(systems.size(), first + slots); i++) {
      SystemView system = systems.get(i);
      system.root().setLayoutY((i % slots) * (tallest + gap) + tallest - system.height());
      system.bar(bar);
      shown.add(system.root());
    }
    if (!root.getChildren().equals(shown)) {
      root.getChildren().setAll(shown);
    }
  }

  private int current() {
    for (int i = 0; i < systems.size(); i++) {
      if (systems.get(i).has(bar)) {
        return i;
      }
    }
    return bar < 0 ? 0 : systems.size() - 1;
  }
}

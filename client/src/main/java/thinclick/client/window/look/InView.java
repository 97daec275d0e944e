package thinclick.client.window.look;

import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import org.jspecify.annotations.Nullable;

/** Moves a page, at once, so that all of a part of it is in view, and no line is cut in two. */
public final class InView {
  private static final double MARGIN = 28;

  /** Where no line of text is cut in two by it, so near the edge will do. */
  private static final double CLOSEST = 6;

  private static final double RULE = 1;

  private InView() {}

  /**
   * Brings a part of a page into view, its beginning where not all of it fits; what is in view
   * already stays.
   */
  public static void bring(Node node) {
    if (pageOf(node) instanceof ScrollPane pane) {
      move(pane, node, pane.getVvalue() * hidden(pane));
    }
  }

  /**
   * Brings it into view, and keeps it there in a window and with text of another size, until
   * somebody moves the page. Of what stands above it as much stays in view as there is room for,
   * wherever the page was before: the same window always shows the same.
   */
  public static void keep(Node node) {
    if (pageOf(node) instanceof ScrollPane pane) {
      Object before = pane.getProperties().computeIfAbsent(Kept.class, any -> new Kept(pane));
      if (before instanceof Kept kept) {
        kept.keep(node);
      }
    }
  }

  /** What one page was last moved to. */
  private static final class Kept {
    private final ScrollPane pane;
    private final Runnable laidOut = this::settle;
    private @Nullable Node node;
    private boolean moving;
    private @Nullable Scene waiting;

    Kept(ScrollPane pane) {
      this.pane = pane;
      pane.getContent().layoutBoundsProperty().addListener(any -> again());
      pane.viewportBoundsProperty().addListener(any -> again());
      // The page moves of itself when it grows; somebody moves it by a wheel, a bar or a key.
      pane.addEventFilter(ScrollEvent.SCROLL, any -> node = null);
      pane.addEventFilter(MouseEvent.MOUSE_PRESSED, any -> node = null);
      pane.addEventFilter(
          KeyEvent.KEY_PRESSED,
          key -> {
            if (!key.isControlDown() && !key.getCode().isLetterKey()) { // a letter taps
              node = null;
            }
          });
    }

    void keep(Node wanted) {
      moving = true;
      if (isInViewFromTheTop(wanted)) {
        pane.setVvalue(0);
      }
      move(pane, wanted, 0);
      moving = false;
      node = wanted;
    }

    /** Then the page is not moved at all. */
    private boolean isInViewFromTheTop(Node wanted) {
      pane.applyCss();
      pane.layout();
      Node page = pane.getContent();
      double end = page.sceneToLocal(wanted.localToScene(wanted.getBoundsInLocal())).getMaxY();
      return end + CLOSEST <= pane.getViewportBounds().getHeight();
    }

    /** Once the page has been laid out: until then nothing stands where it will. */
    private void again() {
      Scene scene = pane.getScene();
      if (node != null && !moving && waiting == null && scene != null) {
        waiting = scene;
        scene.addPostLayoutPulseListener(laidOut);
        Platform.requestNextPulse();
      }
    }

    private void settle() {
      Scene scene = waiting;
      waiting = null;
      if (scene != null) {
        scene.removePostLayoutPulseListener(laidOut);
      }
      Node wanted = node;
      if (wanted != null && !wanted.isVisible()) {
        node = null; // what it was about is answered, and the page is the reader's
      } else if (wanted != null) {
        keep(wanted);
      }
    }
  }

  /** How much of the page is out of view, pixels. */
  private static double hidden(ScrollPane pane) {
    return pane.getContent().getLayoutBounds().getHeight() - pane.getViewportBounds().getHeight();
  }

  /**
   * @param top where the page is moved from, pixels from its upper edge
   */
  private static void move(ScrollPane pane, Node node, double top) {
    pane.applyCss();
    pane.layout();
    double page = pane.getContent().getLayoutBounds().getHeight();
    double shown = pane.getViewportBounds().getHeight();
    Bounds part = pane.getContent().sceneToLocal(node.localToScene(node.getBoundsInLocal()));
    if (page <= shown) {
      return;
    }
    PageLines lines = PageLines.of(pane.getContent());
    // The rule that it begins with need not stand below the one at the edge.
    double begins = part.getMinY() + (beginsWithARule(node) ? RULE : -CLOSEST);
    double latest = Math.min(begins, page - shown);
    double earliest = Math.min(latest, part.getMaxY() + CLOSEST - shown);
    double wanted;
    if (part.getHeight() + MARGIN > shown) {
      wanted = begins; // as much of it as can be
    } else if (part.getMinY() < top) {
      wanted = part.getMinY() - MARGIN;
    } else if (part.getMaxY() + CLOSEST > top + shown) {
      wanted = part.getMaxY() + MARGIN - shown;
    } else if (lines.areCutAt(top)) {
      wanted = Math.max(0, earliest); // in view, as a page of another size has left it
    } else {
      return;
    }
    double to = pastTheEdge(pane.getContent(), lines.between(wanted, earliest, latest, shown));
    pane.setVvalue(Math.max(0, Math.min(1, to / (page - shown))));
  }

  /** The upper edge of a sheet does not stand right below the rule that the page goes under. */
  private static double pastTheEdge(Node page, double to) {
    Node sheet = page.lookup(".sheet");
    if (sheet == null) {
      return to;
    }
    double edge = page.sceneToLocal(sheet.localToScene(sheet.getLayoutBounds())).getMinY();
    return edge > to - RULE && edge < to + 2 * RULE ? edge + RULE : to;
  }

  /** Whether what is ruled above is the first that stands there. */
  private static boolean beginsWithARule(Node node) {
    if (node.getStyleClass().contains("ruled")) {
      return true;
    }
    return node instanceof Parent parent
        && parent.getChildrenUnmodifiable().stream()
            .filter(Node::isManaged)
            .findFirst()
            .map(InView::beginsWithARule)
            .orElse(false);
  }

  private static Node pageOf(Node node) {
    Parent above = node.getParent();
    while (above != null && !(above instanceof ScrollPane)) {
      above = above.getParent();
    }
    return above == null ? node : above;
  }
}

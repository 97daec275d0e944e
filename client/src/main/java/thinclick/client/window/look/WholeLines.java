package thinclick.client.window.look;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import thinclick.client.window.look.ColumnLines.Kind;

/**
 * A sheet that is moved up and down begins and ends with whole lines: a line of words that an edge
 * of the window would cut is covered by the sheet's own paper until all of it is in view. So is a
 * part of a picture, and a heading that would stand alone at the foot, where the page still shows
 * enough. Of two columns side by side each has lines of its own.
 */
public final class WholeLines {
  /** Nothing covers more of the page than this, whatever stands on it. */
  private static final double MOST = 0.3;

  /** But a heading goes with what it heads: alone above so much free paper it says nothing. */
  private static final double MOST_HEADED = 0.4;

  /** So far a frame around what has the focus reaches out of its column, pixels. */
  private static final double FRAME = 10;

  private final ScrollPane pane;
  private final Pane page;
  private final Region sheet;
  private final List<Region> covers = new ArrayList<>();
  private int used;

  private WholeLines(ScrollPane pane, Pane page, Region sheet) {
    this.pane = pane;
    this.page = page;
    this.sheet = sheet;
  }

  /**
   * Keeps the lines of a sheet whole from now on.
   *
   * @param page what the pane moves
   * @param sheet on the page
   */
  public static void keep(ScrollPane pane, Pane page, Region sheet) {
    WholeLines kept = new WholeLines(pane, page, sheet);
    AfterLayout.look(pane, kept::look);
  }

  private void look() {
    double top = pane.localToScene(0, pane.getInsets().getTop()).getY();
    double foot = top + pane.getViewportBounds().getHeight();
    used = 0;
    for (ColumnLines column : ColumnLines.of(sheet, top, foot)) {
      cover(column, top, foot);
    }
    for (Region left : covers.subList(used, covers.size())) {
      left.setVisible(false);
    }
  }

  /** Where a page would show too little with its pictures whole, they are cut; words are not. */
  private void cover(ColumnLines column, double top, double foot) {
    double most = MOST * (foot - top);
    Node over = column.column();
    for (Kind kind : List.of(Kind.PICTURE, Kind.FRAME)) {
      double from = Math.ceil(column.from(top, kind));
      if (from - top <= most && !column.hasFocus(top, from)) {
        lay(over, top, from);
        break;
      }
    }
    double headed = Math.floor(column.to(foot, Kind.HEADED));
    for (Kind kind : List.of(Kind.WHOLE, Kind.HEADED, Kind.PICTURE, Kind.FRAME)) {
      double to = Math.floor(column.to(foot, kind));
      boolean heads = kind.compareTo(Kind.HEADED) >= 0;
      boolean alone = kind == Kind.PICTURE && headed < to;
      double room = (heads ? MOST_HEADED : MOST) * (foot - top);
      if (foot - to <= room && !alone && !column.hasFocus(to, foot)) {
        lay(over, to, foot);
        break;
      }
    }
  }

  private void lay(Node column, double from, double to) {
    if (to - from < 1) {
      return;
    }
    Point2D upper = page.sceneToLocal(0, from);
    Bounds whole = sheet.getBoundsInParent();
    Bounds part = page.sceneToLocal(column.localToScene(column.getLayoutBounds()));
    boolean all = column.equals(sheet);
    double left = Math.max(whole.getMinX() + 1, all ? 0 : part.getMinX() - FRAME);
    double right = Math.min(whole.getMaxX() - 1, all ? whole.getMaxX() : part.getMaxX() + FRAME);
    Region cover = next();
    cover.resizeRelocate(left, upper.getY(), Math.max(0, right - left), to - from);
    cover.setVisible(true);
  }

  private Region next() {
    if (used == covers.size()) {
      Region cover = new Region();
      cover.getStyleClass().add("sheet-cover");
      cover.setManaged(false);
      cover.setMouseTransparent(true);
      covers.add(cover);
      page.getChildren().add(cover);
    }
    return covers.get(used++);
  }
}

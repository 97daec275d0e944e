package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ObjDoubleConsumer;

/**
 * What stands on a sheet, one below the other: either all on one sheet as long as it takes, or on
 * pages, where what belongs together is not parted.
 */
final class SheetFlow {
  private final List<Block> blocks = new ArrayList<>();

  /**
   * Something that is never cut.
   *
   * @param above what is left free above it, except at the head of a page
   * @param height of it
   * @param keepsNext true where it must not stand at the foot of a page without what follows
   * @param draw draws it, its top at a height
   */
  private record Block(
      double above, double height, boolean keepsNext, ObjDoubleConsumer<Easel> draw) {}

  void add(double above, double height, ObjDoubleConsumer<Easel> draw) {
    blocks.add(new Block(above, height, false, draw));
  }

  /** Adds what must not be parted from what is added next. */
  void addKept(double above, double height, ObjDoubleConsumer<Easel> draw) {
    blocks.add(new Block(above, height, true, draw));
  }

  /**
   * Draws all of it on one sheet.
   *
   * @return where it ends
   */
  double draw(Easel easel, double top) {
    double y = top;
    for (Block block : blocks) {
      y += block.above();
      block.draw().accept(easel, y);
      y += block.height();
    }
    return y;
  }

  /** Draws it on pages, each between a top and a bottom. */
  List<Easel> pages(double top, double bottom) {
    List<Easel> pages = new ArrayList<>();
    Easel page = new Easel();
    pages.add(page);
    double y = top;
    for (int i = 0; i < blocks.size(); i++) {
      Block block = blocks.get(i);
      double above = y == top ? 0 : block.above();
      if (y > top && y + above + chain(i) > bottom) {
        page = new Easel();
        pages.add(page);
        y = top;
        above = 0;
      }
      block.draw().accept(page, y + above);
      y += above + block.height();
    }
    return pages;
  }

  /** How high a block is with all that it keeps. */
  private double chain(int from) {
    double height = blocks.get(from).height();
    for (int i = from; blocks.get(i).keepsNext() && i + 1 < blocks.size(); i++) {
      height += blocks.get(i + 1).above() + blocks.get(i + 1).height();
    }
    return height;
  }
}

package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import javafx.scene.Node;
import thinclick.client.window.look.WidthFirst;

/**
 * A few controls in the fewest rows that hold them, those as even as can be, each filled to both
 * edges: none stands alone where two and two would do, and all rows end on one line. A row breaks
 * by the least widths, so that words which come and go move nothing while they find room.
 */
final class EvenRows extends WidthFirst {
  private final double across;
  private final double down;

  /**
   * @param across pixels between neighbours
   * @param down pixels between rows
   */
  EvenRows(double across, double down, Node... controls) {
    this.across = across;
    this.down = down;
    getChildren().setAll(controls);
  }

  private record Place(Node node, double x, double y, double width, double height) {}

  private List<Place> places(double width) {
    List<Place> least = places(width, node -> node.minWidth(-1));
    boolean room = least.stream().allMatch(place -> place.width() >= wish(place.node()));
    return room ? least : places(width, EvenRows::wish);
  }

  private static double wish(Node node) {
    return Math.max(node.minWidth(-1), node.prefWidth(-1));
  }

  private List<Place> places(double width, ToDoubleFunction<Node> need) {
    List<Place> places = new ArrayList<>();
    double y = 0;
    for (List<Node> row : rows(width, need)) {
      double each = Math.max(0, Math.floor((width - taken(row, need)) / row.size()));
      double high =
          row.stream().mapToDouble(node -> Math.ceil(node.prefHeight(-1))).max().orElse(0);
      double x = 0;
      for (int i = 0; i < row.size(); i++) {
        double wide = Math.ceil(need.applyAsDouble(row.get(i))) + each;
        if (i == row.size() - 1) {
          wide = Math.max(wide, Math.floor(width - x));
        }
        places.add(new Place(row.get(i), x, y, wide, high));
        x += wide + across;
      }
      y += high + down;
    }
    return places;
  }

  private double taken(List<Node> row, ToDoubleFunction<Node> need) {
    double sum = (row.size() - 1) * across;
    for (Node node : row) {
      sum += Math.ceil(need.applyAsDouble(node));
    }
    return sum;
  }

  /** Each set bit of a number from 0 is a break after the control of that place. */
  private List<List<Node>> rows(double width, ToDoubleFunction<Node> need) {
    List<Node> nodes = getManagedChildren();
    List<List<Node>> best = List.of();
    double bestWidest = Double.MAX_VALUE;
    for (int breaks = 0; !nodes.isEmpty() && breaks < (1 << (nodes.size() - 1)); breaks++) {
      List<List<Node>> rows = broken(nodes, breaks);
      double widest = rows.stream().mapToDouble(row -> taken(row, need)).max().orElse(0);
      boolean fits = widest <= width;
      boolean bestFits = bestWidest <= width;
      boolean fewer = rows.size() < best.size();
      boolean evener = widest < bestWidest;
      boolean asFew = rows.size() == best.size();
      boolean better = (fits && bestFits) ? (fewer || (asFew && evener)) : evener;
      if (best.isEmpty() || better) {
        best = rows;
        bestWidest = widest;
      }
    }
    return best;
  }

  private static List<List<Node>> broken(List<Node> nodes, int breaks) {
    List<List<Node>> rows = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < nodes.size(); i++) {
      if (i == nodes.size() - 1 || ((breaks >> i) & 1) == 1) {
        rows.add(nodes.subList(from, i + 1));
        from = i + 1;
      }
    }
    return rows;
  }

  @Override
  protected double computeMinWidth(double height) {
    return getManagedChildren().stream().mapToDouble(EvenRows::wish).max().orElse(0);
  }

  @Override
  protected double computePrefWidth(double height) {
    return Math.ceil(taken(getManagedChildren(), EvenRows::wish));
  }

  @Override
  protected double heightAt(double width) {
    return places(width).stream().mapToDouble(place -> place.y() + place.height()).max().orElse(0);
  }

  @Override
  protected void layoutChildren() {
    for (Place place : places(getWidth())) {
      place.node().resizeRelocate(place.x(), place.y(), place.width(), place.height());
    }
  }
}

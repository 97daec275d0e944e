package thinclick.client.window.lectern;

import java.util.Arrays;
import java.util.List;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.scene.layout.Region;
import thinclick.client.window.look.WidthFirst;

/**
 * Three parts of a page beside each other where all have the room they ask for, the third as high
 * as the page. Else the first and the third beside each other, the second below the shorter of
 * them; else all in one column. The least widths come from the stylesheet in ems, so that larger
 * text stacks earlier. Everything stands on whole pixels, so that no line is drawn over two.
 */
final class PromptBook extends WidthFirst {
  private final Region first;
  private final Region second;
  private final Region third;
  private final double gap;
  private final ReadOnlyIntegerWrapper columns = new ReadOnlyIntegerWrapper(3);
  private double least;

  PromptBook(Region first, Region second, Region third, double gap) {
    this.first = first;
    this.second = second;
    this.third = third;
    this.gap = gap;
    getChildren().addAll(first, second, third);
  }

  /** In how many columns they were laid out, 1 to 3. */
  ReadOnlyIntegerProperty columnsProperty() {
    return columns.getReadOnlyProperty();
  }

  /** How high the third of three parts beside each other is at least, pixels. */
  void least(double height) {
    if (least != height) {
      least = height;
      requestLayout();
    }
  }

  /**
   * Where each part stands at a width: x, y, width, height of the three, then the height of all.
   */
  private double[][] places(double width) {
    double a = first.minWidth(-1);
    double b = second.minWidth(-1);
    double c = third.minWidth(-1);
    double three = a + b + 1.45 * c + 2 * gap;
    if (three <= width) {
      double rest = width - 2 * gap;
      double left = Math.floor(Math.max(a, rest * 0.28));
      double middle = Math.floor(Math.max(b, rest * 0.22));
      double right = Math.floor(rest - left - middle);
      return new double[][] {
        {0, 0, left, high(first, left)},
        {left + gap, 0, middle, high(second, middle)},
        {left + middle + 2 * gap, 0, right, Math.max(Math.floor(least), high(third, right))}
      };
    }
    double column = Math.max(a, b);
    if (column + gap + c <= width) {
      double left = Math.floor(Math.max(column, (width - gap) * 0.36));
      double right = Math.floor(width - gap - left);
      double under = high(first, left);
      double beside = high(third, right);
      boolean belowThird = beside < under;
      return new double[][] {
        {0, 0, left, under},
        belowThird
            ? new double[] {left + gap, beside + gap, right, high(second, right)}
            : new double[] {0, under + gap, left, high(second, left)},
        {left + gap, 0, right, beside}
      };
    }
    double one = high(first, width);
    double two = high(second, width);
    double top = high(third, width);
    return new double[][] {
      {0, top + gap, width, one},
      {0, top + one + 2 * gap, width, two},
      {0, 0, width, top}
    };
  }

  private static double high(Region part, double width) {
    return Math.ceil(part.prefHeight(width));
  }

  @Override
  protected double computePrefWidth(double height) {
    return first.minWidth(-1) + gap + third.minWidth(-1);
  }

  @Override
  protected double heightAt(double width) {
    double lowest = 0;
    for (double[] place : places(width)) {
      lowest = Math.max(lowest, place[1] + place[3]);
    }
    return lowest;
  }

  @Override
  protected void place() {
    double[][] places = places(Math.floor(getWidth()));
    List<Region> parts = List.of(first, second, third);
    columns.set((int) Arrays.stream(places).mapToDouble(place -> place[0]).distinct().count());
    for (int i = 0; i < parts.size(); i++) {
      double[] place = places[i];
      parts.get(i).resizeRelocate(place[0], place[1], place[2], place[3]);
    }
  }
}

package thinclick.client.window.look;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * What is to be filled in: names in one column, and beside each on its base line what is written or
 * chosen, all beginning at the same place. Least widths stand in the stylesheet; distances are in
 * sizes of the text.
 */
public final class Form extends WidthFirst {
  private static final double BETWEEN_COLUMNS_EMS = 0.8;
  private static final double BETWEEN_LINES_EMS = 0.55;

  private final List<Line> lines = new ArrayList<>();
  private List<Form> aligned = List.of(this);

  private record Line(Label name, Region beside) {}

  public Form() {
    getStyleClass().add("form");
  }

  /** What is filled in begins as far from the left in all of these. */
  public static void align(Form... forms) {
    for (Form form : forms) {
      form.aligned = List.of(forms);
    }
  }

  /**
   * A line more.
   *
   * @param below what is said of it, under what is filled in
   */
  public void line(String said, Region filled, Node... below) {
    Label name = new Label(said);
    name.getStyleClass().add("field-name");
    if (filled instanceof Control control) {
      name.setLabelFor(control);
    }
    Region beside = filled;
    if (below.length > 0) {
      VBox all = new VBox(filled);
      all.getStyleClass().add("close-block");
      all.getChildren().addAll(below);
      beside = all;
    }
    lines.add(new Line(name, beside));
    getChildren().addAll(name, beside);
  }

  /** Keeps the first lines and takes the others out. */
  public void keep(int first) {
    while (lines.size() > first) {
      Line last = lines.remove(lines.size() - 1);
      getChildren().removeAll(last.name(), last.beside());
    }
  }

  private double em() {
    return lines.isEmpty() ? 0 : lines.get(0).name().getFont().getSize();
  }

  private double besideAt() {
    double widest =
        aligned.stream()
            .flatMap(form -> form.lines.stream())
            .mapToDouble(line -> Math.max(line.name().minWidth(-1), line.name().prefWidth(-1)))
            .max()
            .orElse(0);
    return snapSizeX(widest + BETWEEN_COLUMNS_EMS * em());
  }

  /** What would end next to the edge of its column ends there. */
  private double width(Region beside, double room) {
    double wanted = Math.max(beside.minWidth(-1), beside.maxWidth(-1));
    return wanted > room - em() ? room : wanted;
  }

  @Override
  protected double computePrefWidth(double height) {
    return besideAt()
        + lines.stream().mapToDouble(line -> line.beside().prefWidth(-1)).max().orElse(0);
  }

  @Override
  protected double heightAt(double width) {
    return set(width, false);
  }

  @Override
  protected void place() {
    set(getWidth(), true);
  }

  /** Sets the lines below each other, or only finds out how high they are. */
  private double set(double width, boolean place) {
    double left = besideAt();
    double y = 0;
    for (Line line : lines) {
      if (y > 0) {
        y += snapSpaceY(BETWEEN_LINES_EMS * em());
      }
      Label name = line.name();
      Region beside = line.beside();
      double across = width(beside, Math.max(0, width - left));
      double high = snapSizeY(beside.prefHeight(across));
      double nameHigh = snapSizeY(name.prefHeight(-1));
      if (place) {
        beside.resize(across, high);
        beside.layout(); // a pane knows its base line once its lines are set
        name.resize(left, nameHigh);
      }
      double down = name.getBaselineOffset() - beside.getBaselineOffset();
      double nameY = snapPositionY(Math.max(0, -down));
      double besideY = snapPositionY(Math.max(0, down));
      if (place) {
        name.relocate(0, y + nameY);
        beside.relocate(left, y + besideY);
      }
      y += Math.max(nameY + nameHigh, besideY + high);
    }
    return y;
  }
}

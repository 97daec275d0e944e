package thinclick.client.window.review;

import static thinclick.client.window.look.Styled.styled;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.WideTable;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.PlayerSheet.Section;
import thinclick.server.picture.PlayerSheet.Table;

/** The sections of a review's sheet as they stand in the window: the same that is kept on paper. */
final class SectionNodes {
  private final SharedColumns columns;

  /**
   * @param columns of the page's tables
   */
  SectionNodes(SharedColumns columns) {
    this.columns = columns;
  }

  /** A section under its heading, in the window's colours. */
  Node node(Section section, Palette palette) {
    Node content = content(section, palette);
    content.setId("review-" + section.id());
    String head = section.head();
    if (head == null) {
      return styled(new VBox(content), "ends");
    }
    Label heading = Prose.of(head);
    heading.getStyleClass().add("heading");
    Table table = section.table();
    Node shown = table == null ? content : WideTable.of((GridPane) content);
    VBox box = styled(new VBox(8, heading, shown), "ruled");
    if (table != null) {
      section.says().forEach(note -> box.getChildren().add(note(note)));
    }
    return box;
  }

  /** What there is to know of a table, below it. */
  static Node note(String says) {
    return styled(Prose.of(says), "soft");
  }

  private Node content(Section section, Palette palette) {
    Drawing picture = section.picture();
    if (picture != null) {
      return new DrawingNode(picture, palette);
    }
    Table table = section.table();
    if (table != null) {
      GridPane grid = columns.table(table.heads(), table.lines(), table::isFigures);
      grid.setAccessibleText(section.head());
      return grid;
    }
    VBox prose = new VBox(7);
    for (String sentence : section.says()) {
      prose.getChildren().add(Prose.of(sentence));
    }
    return prose;
  }
}

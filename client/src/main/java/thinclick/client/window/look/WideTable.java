package thinclick.client.window.look;

import javafx.beans.binding.Bindings;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ScrollPane.ScrollBarPolicy;
import javafx.scene.layout.GridPane;

/**
 * A table that may be wider than its page where text is very large: then it is moved sideways by
 * itself, and the page is not.
 */
public final class WideTable {
  /** What its style is called. */
  public static final String STYLE = "wide-table";

  private WideTable() {}

  /** Puts a table where it can be moved. */
  public static ScrollPane of(GridPane table) {
    ScrollPane pane = new ScrollPane(table);
    pane.getStyleClass().add(STYLE);
    pane.setFitToWidth(true);
    pane.setVbarPolicy(ScrollBarPolicy.NEVER);
    pane.setMinWidth(0);
    pane.setAccessibleText(table.getAccessibleText());
    pane.focusTraversableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> table.minWidth(-1) > pane.getWidth() + 1,
                pane.widthProperty(),
                table.layoutBoundsProperty()));
    return pane;
  }
}

package thinclick.client.window.lectern;

import java.util.function.Function;
import java.util.function.Predicate;
import javafx.css.PseudoClass;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;

/**
 * One lesson or drill in its list; a click on it or Enter chooses it. What is in use has a double
 * rule before its line, and a word for those who hear it.
 */
final class MaterialCell<T> extends ListCell<T> {
  private static final PseudoClass IN_USE = PseudoClass.getPseudoClass("in-use");

  private final Words words;
  private final Function<T, String> line;
  private final Predicate<T> used;

  private MaterialCell(Words words, Function<T, String> line, Predicate<T> used, Runnable choose) {
    this.words = words;
    this.line = line;
    this.used = used;
    setOnMouseClicked(done -> choose.run());
  }

  /**
   * Lets a list show such lines.
   *
   * @param line what is said of one
   * @param used whether the room has it now
   * @param choose takes the one that is marked
   */
  static <T> void in(
      ListView<T> list, Words words, Function<T, String> line, Predicate<T> used, Runnable choose) {
    list.getStyleClass().add("material-list");
    list.setCellFactory(any -> new MaterialCell<>(words, line, used, choose));
    list.addEventFilter(
        KeyEvent.KEY_PRESSED,
        key -> {
          if (key.getCode() == KeyCode.ENTER && !key.isControlDown()) {
            choose.run();
          }
        });
  }

  @Override
  protected void updateItem(@Nullable T item, boolean empty) {
    super.updateItem(item, empty);
    boolean inUse = item != null && !empty && used.test(item);
    String says = item == null || empty ? "" : line.apply(item);
    setText(says);
    setAccessibleText(inUse ? words.say("lectern.list.inUse", says) : says);
    pseudoClassStateChanged(IN_USE, inUse);
  }
}

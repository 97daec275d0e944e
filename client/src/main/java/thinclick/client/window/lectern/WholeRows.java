package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.concurrent.Executor;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import thinclick.client.window.words.Words;

/** A list of whole rows, and below it how many more there are, and on which side. */
final class WholeRows<T> {
  private final Words words;
  private final Executor soon;
  private final RowsList<T> list = new RowsList<>(this::moved);
  private final Label more = styled(new Label(), "soft");
  private final VBox root = new VBox(2, list, more);
  private boolean asked;

  /**
   * @param soon on the window's thread, once what is being done there is done
   */
  WholeRows(Words words, Executor soon) {
    this.words = words;
    this.soon = soon;
    more.getStyleClass().add("more-below");
  }

  VBox root() {
    return root;
  }

  /** The list itself, which hears the keys. */
  RowsList<T> list() {
    return list;
  }

  /** Shows so many rows of what there is, one at least. */
  void rows(int most) {
    int all = list.getItems().size();
    list.rows(Math.max(1, Math.min(most, all)));
    Keyed.shown(more, all > most);
    moved();
  }

  /** Said once the list has been laid out: a label may not change under its parent's hands. */
  private void moved() {
    if (!asked) {
      asked = true;
      soon.execute(
          () -> {
            asked = false;
            more.setText(says());
          });
    }
  }

  /** What goes on below, or at the end of the list how much stands above. */
  private String says() {
    int below = list.below();
    if (below > 0) {
      return words.count("lectern.list.more", below);
    }
    int above = list.aboveTheLast();
    return above == 0 ? "" : words.count("lectern.list.more.above", above);
  }
}

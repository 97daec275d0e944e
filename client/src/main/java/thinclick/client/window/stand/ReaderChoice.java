package thinclick.client.window.stand;

import java.util.List;
import java.util.function.IntConsumer;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import thinclick.client.window.words.Words;

/** Words to choose a part by, where several read from one stand. */
final class ReaderChoice {
  private final Words words;
  private final WordFlow root = new WordFlow();
  private final ToggleGroup group = new ToggleGroup();

  ReaderChoice(Words words) {
    this.words = words;
    root.getStyleClass().add("stand-whose");
  }

  Node root() {
    return root;
  }

  boolean isEmpty() {
    return root.getChildren().isEmpty();
  }

  /**
   * Offers these readers' parts and all together; nothing where one reads alone.
   *
   * @param chosen is told a reader's number, or {@link ReaderPages#ALL}
   */
  void offer(List<String> names, IntConsumer chosen) {
    root.getChildren().clear();
    group.getToggles().clear();
    for (int i = ReaderPages.ALL; names.size() > 1 && i < names.size(); i++) {
      int part = i;
      boolean all = i == ReaderPages.ALL;
      ToggleButton word = new ToggleButton(all ? words.say("stand.all") : names.get(i));
      word.getStyleClass().add("tab-word");
      word.setId(all ? "stand-all" : "stand-part-" + i);
      word.setToggleGroup(group);
      word.setOnAction(done -> chosen.accept(part));
      root.getChildren().add(word);
    }
  }

  /** Shows which is chosen. */
  void choose(int part) {
    if (!isEmpty()) {
      group.selectToggle(group.getToggles().get(part - ReaderPages.ALL));
    }
  }
}

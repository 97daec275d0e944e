package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import javafx.scene.control.Button;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;

/**
 * The ways to the drills and to what is composed, for a page where both stand further down: a pair
 * that no line is broken in.
 */
final class Ways {
  private final HBox ways;
  private @Nullable Pane stands;

  Ways(Words words, Runnable toDrills, Runnable toCompose) {
    ways =
        styled(
            new HBox(
                way("to-drills", words.say("lectern.material.all"), words.keys("Ctrl+O"), toDrills),
                way("to-compose", words.say("lectern.compose"), words.keys("Ctrl+E"), toCompose)),
            "lectern-heads");
  }

  private static Button way(String id, String to, String keys, Runnable goes) {
    return styled(Keyed.button(id, to, keys, goes), "quiet");
  }

  /** Puts them at the end of a row; nowhere for null. */
  void stand(@Nullable Pane where) {
    if (where != stands) {
      if (stands != null) {
        stands.getChildren().remove(ways);
      }
      stands = where;
      if (where != null) {
        where.getChildren().add(ways);
      }
    }
  }

  /**
   * Whether they are wanted: where the drills' own head is in view they would say it twice. They
   * keep their place, so that nothing moves.
   */
  void wanted(boolean now) {
    ways.setVisible(now);
  }

  /** Whether there is something to choose now. */
  void open(boolean now) {
    ways.getChildren().forEach(way -> way.setDisable(!now));
  }
}

package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.layout.Pane;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;

/** The ways to the drills and to what is composed, for a page where both stand further down. */
final class Ways {
  private final List<Button> ways;
  private @Nullable Pane stands;

  Ways(Words words, Runnable toDrills, Runnable toCompose) {
    ways =
        List.of(
            way("to-drills", words.say("lectern.material.all"), words.keys("Ctrl+O"), toDrills),
            way("to-compose", words.say("lectern.compose"), words.keys("Ctrl+E"), toCompose));
  }

  private static Button way(String id, String to, String keys, Runnable goes) {
    return styled(Keyed.button(id, to, keys, goes), "quiet");
  }

  /** Puts them at the end of a row; nowhere for null. */
  void stand(@Nullable Pane where) {
    if (where != stands) {
      if (stands != null) {
        stands.getChildren().removeAll(ways);
      }
      stands = where;
      if (where != null) {
        where.getChildren().addAll(ways);
      }
    }
  }

  /**
   * Whether they are wanted: where the drills' own head is in view they would say it twice. They
   * keep their place, so that nothing moves.
   */
  void wanted(boolean now) {
    ways.forEach(way -> way.setVisible(now));
  }

  /** Whether there is something to choose now. */
  void open(boolean now) {
    ways.forEach(way -> way.setDisable(!now));
  }
}

package thinclick.client.window.stand;

import static thinclick.client.window.look.Styled.styled;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Right above the music: the count or the bar, and below it what comes next. */
final class WhereNow {
  private final Label count = styled(new Label(), "count");
  private final Label below = styled(new Label(), "soft");
  private final Label briefly = styled(new Label(), "soft");
  private final VBox root;

  WhereNow() {
    count.setId("count");
    below.setId("countdown");
    briefly.setId("stand-page");
    Region strut = styled(new Region(), "stand-strut"); // so that no word of it moves the music
    // As high for a count as for nothing.
    HBox counted = styled(new HBox(count, briefly), "stand-count");
    counted.setFillHeight(false);
    root = new VBox(0, strut, counted, below);
    root.setAlignment(Pos.BOTTOM_RIGHT);
    root.setMinWidth(Region.USE_PREF_SIZE);
  }

  Node root() {
    return root;
  }

  void tell(StandWords.Where now) {
    count.setText(now.large());
    below.setText(now.below());
    briefly.setText(now.briefly());
  }

  /** Without the line below: the sentence at the foot of the window says it as well. */
  void brief(boolean now) {
    below.setVisible(!now);
    below.setManaged(!now);
    briefly.setVisible(now);
    briefly.setManaged(now);
  }
}

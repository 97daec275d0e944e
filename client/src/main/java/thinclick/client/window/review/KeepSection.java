package thinclick.client.window.review;

import java.util.List;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Prose;

/** All that can be taken along, in one place: the reader's own, and beside it the leader's. */
final class KeepSection {
  private final FlowPane buttons = new FlowPane(14, 10);
  private final Label heading;
  private final Node saysOwn;
  private final LeaderView leader;
  private final VBox box = new VBox();
  private List<Node> own = List.of();
  private boolean leading;

  /**
   * @param head what stands above it
   * @param saysOwn what the reader kept last and where
   * @param leader whose buttons come and go with the lead
   */
  KeepSection(String head, Node saysOwn, LeaderView leader) {
    this.saysOwn = saysOwn;
    this.leader = leader;
    heading = Prose.of(head);
    heading.getStyleClass().add("heading");
    box.getStyleClass().addAll("stacked", "ruled");
    box.setId("review-keep");
    leader.kept().addListener((ListChangeListener<Node>) any -> again());
  }

  /**
   * Shows what one reader can take along.
   *
   * @param wanted the reader's own buttons
   * @param leads whether what the leader keeps stands beside them
   */
  Node of(List<Node> wanted, boolean leads) {
    own = List.copyOf(wanted);
    leading = leads;
    again();
    return box;
  }

  private void again() {
    buttons.getChildren().setAll(own);
    box.getChildren().setAll(heading, buttons, saysOwn);
    if (leading) {
      buttons.getChildren().addAll(leader.kept());
      box.getChildren().add(leader.saysKept());
    }
  }
}

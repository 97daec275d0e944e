package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Prose;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.words.Words;

/** Whether the next deal is fitted to each chair, and, once it is dealt, why each got what. */
final class FitView {
  private final LecternModel lectern;
  private final ClassDesk classes;
  private final CheckBox fit = new CheckBox();
  private final VBox says = new VBox(2);
  private final VBox root = new VBox(6, fit, says);
  private List<String> shown = List.of();

  FitView(Words words, LecternModel lectern, ClassDesk classes) {
    this.lectern = lectern;
    this.classes = classes;
    fit.setText(words.say("lectern.fit"));
    fit.setId("fit");
    Prose.in(fit);
    fit.selectedProperty().bindBidirectional(lectern.fittingProperty());
    says.setId("fit-says");
  }

  VBox root() {
    return root;
  }

  /** Offered where a class is open that has played before. */
  void show() {
    boolean offered = classes.canFit();
    Keyed.shown(root, offered);
    List<String> reasons = offered && lectern.dealtFitted() ? classes.reasons() : List.of();
    Keyed.shown(says, !reasons.isEmpty());
    if (!reasons.equals(shown)) {
      shown = reasons;
      says.getChildren().clear();
      for (String reason : reasons) {
        Label label = styled(Prose.of(reason), "soft");
        says.getChildren().add(label);
      }
    }
  }
}

package thinclick.client.window.review;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.server.picture.PlayerSheet.Section;

/** What can be done from a review's page: go on, listen again, keep it. */
final class ReviewButtons {
  private final ReviewCommands commands;
  private final Words words;
  private final Label done = sentence();
  private Runnable toCheck = () -> {};

  ReviewButtons(ReviewCommands commands, Words words) {
    this.commands = commands;
    this.words = words;
    done.setId("review-done");
    done.textProperty().bind(commands.saysProperty());
  }

  /** The way to the sound check, for whoever was not heard. */
  void onCheck(Runnable does) {
    toCheck = does;
  }

  /** What is to be done next and can be done from here. */
  @Nullable Node steps(ReviewPage page, Section steps) {
    FlowPane line = new FlowPane(14, 10);
    if (page.unheard()) {
      line.getChildren().add(check());
    }
    // Where nothing was heard nothing is proposed; the same is dealt again.
    if (!commands.next().isEmpty() || (page.unheard() && commands.canSetUp())) {
      line.getChildren().add(setUp(steps));
    }
    if (line.getChildren().isEmpty()) {
      return null;
    }
    line.getChildren().get(0).getStyleClass().add("primary");
    return line;
  }

  private Button check() {
    Button check = button("review-check", "review.next.check", toCheck);
    withKeys(check, check.getText(), "Ctrl+1");
    return check;
  }

  /** What the lectern proposes, for whoever leads: the sentence above says it. */
  private Button setUp(Section steps) {
    // Beside a step of one's own, the button says whose step it sets up.
    String sets = steps.says().size() > 1 ? "review.next.band" : "review.next";
    boolean changes = commands.nextChanges();
    Button set = button("review-next", changes ? sets : "review.next.again", commands::setUp);
    if (!changes) {
      // In a lesson the button does what the lesson's key does, and says it in the same words.
      String lesson = commands.lessonStep();
      withKeys(
          set,
          lesson.isEmpty() ? set.getText() : lesson,
          lesson.isEmpty() ? "Ctrl+D" : "Ctrl+Enter");
    }
    set.setDisable(!commands.canSetUp());
    return set;
  }

  private void withKeys(Button button, String says, String english) {
    Label keys = styled(new Label(words.keys(english)), "keys");
    button.getStyleClass().add("keyed");
    keys.setMinWidth(Region.USE_PREF_SIZE);
    button.setText(says);
    button.setAccessibleText(says + ", " + keys.getText());
    button.setGraphic(keys);
    button.setContentDisplay(ContentDisplay.RIGHT);
  }

  /** What sounds of the take, where something can be heard. */
  Node listen(ReviewPage page) {
    Button click =
        button("listen-click", "review.listen.click", () -> commands.listen(page, false));
    Button pulse = button("listen-pulse", "review.listen.pulse", () -> commands.listen(page, true));
    Button stop =
        button(
            "listen-stop",
            "review.listen.stop",
            () -> {
              // The next key that is pressed is not meant for what stands below.
              click.requestFocus();
              commands.silence();
            });
    click.disableProperty().bind(commands.audibleProperty().not());
    pulse.disableProperty().bind(commands.audibleProperty().not());
    stop.disableProperty().bind(commands.listeningProperty().not());
    Label says = sentence();
    says.textProperty().bind(commands.heardProperty());
    return new VBox(10, new FlowPane(14, 10, click, pulse, stop), says);
  }

  /**
   * What a reader can take along.
   *
   * @param whose the player's name where several read here, for the file's; else empty
   */
  List<Node> keep(ReviewPage page, ReviewModel asking, String whose) {
    return List.of(
        button("save-pdf", "review.save.pdf", () -> commands.save(page, "pdf", whose)),
        button("save-svg", "review.save.svg", () -> commands.save(page, "svg", whose)),
        button("keep-take", "review.take", () -> commands.keepTake(asking, whose)));
  }

  /** What was kept last and where. */
  Node saysKept() {
    return done;
  }

  /** A sentence that takes no room while there is none. */
  private static Label sentence() {
    Label sentence = Prose.in(new Label());
    sentence.managedProperty().bind(sentence.textProperty().isNotEmpty());
    return sentence;
  }

  private Button button(String id, String key, Runnable does) {
    Button button = new Button(words.say(key));
    button.setId(id);
    button.setOnAction(done -> does.run());
    return button;
  }
}

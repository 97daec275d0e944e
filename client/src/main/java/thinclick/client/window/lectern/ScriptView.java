package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import java.util.Objects;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.server.lesson.LessonScript;

/** The lesson's script: what is said or done now, large, and below it what comes after. */
final class ScriptView {
  private final Prompt prompt;
  private final Label headline = styled(new Label(), "script");
  private final GridPane lines = styled(new GridPane(), "script-lines");
  private final Label left = styled(new Label(), "soft");
  private final VBox root = styled(new VBox(8), "double-ruled");
  private final StackPane cues = styled(new StackPane(), "soft");
  private List<LessonScript.Line> shown = List.of();
  private LessonScript.@Nullable Kind headed;

  ScriptView(Words words, Prompt prompt, LessonModel lesson) {
    this.prompt = prompt;
    headline.setId("script");
    Prose.in(headline);
    lines.setId("script-lines");
    left.setId("lesson-left");
    Prose.in(left);
    ColumnConstraints first = new ColumnConstraints();
    first.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints says = new ColumnConstraints();
    says.setMinWidth(0);
    says.setHgrow(Priority.ALWAYS);
    lines.getColumnConstraints().setAll(first, says);
    for (LessonScript.Kind kind : LessonScript.Kind.values()) {
      cues.getChildren().add(styled(new Label(prompt.cue(kind)), "soft"));
    }
    cues.setVisible(false); // it keeps the first column as wide as the widest of them
    root.setId("lesson");
    Button leave =
        styled(
            Keyed.button("leave-lesson", words.say("lectern.lesson.leave"), "", lesson::leave),
            "quiet");
    HBox.setHgrow(left, Priority.ALWAYS);
    left.setMaxWidth(Double.MAX_VALUE);
    HBox last = new HBox(10, left, leave);
    last.setAlignment(Pos.BASELINE_LEFT);
    root.getChildren().setAll(headline, lines, last);
  }

  VBox root() {
    return root;
  }

  /** Where the take stands; the same again changes nothing. */
  void look(TakeMoment.Part part) {
    String says = prompt.headline(part);
    if (!says.equals(headline.getText())) {
      headline.setText(says);
    }
    List<LessonScript.Line> now = prompt.lines(part);
    LessonScript.Kind head = prompt.headed(part);
    if (!now.equals(shown) || head != headed) {
      shown = now;
      headed = head;
      write();
    }
  }

  /** What the lesson's clock shows. */
  void tick() {
    String says = prompt.left();
    if (!says.equals(left.getText())) {
      left.setText(says);
    }
  }

  /**
   * Lines of one kind stand under each other, with what they are for before the first, which may be
   * the headline.
   */
  private void write() {
    lines.getChildren().clear();
    if (!shown.isEmpty()) {
      lines.add(cues, 0, 0);
    }
    LessonScript.Kind before = headed;
    for (int i = 0; i < shown.size(); i++) {
      LessonScript.Line line = shown.get(i);
      String cue = prompt.cue(line.kind());
      Label says = Prose.of(line.text());
      says.setAccessibleText(cue + " " + line.text());
      if (!Objects.equals(before, line.kind())) {
        lines.add(styled(new Label(cue), "soft"), 0, i);
      }
      lines.add(says, 1, i);
      before = line.kind();
    }
    lines.getChildren().forEach(node -> GridPane.setValignment(node, VPos.TOP));
  }
}

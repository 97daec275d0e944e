package thinclick.client.window.help;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;
import thinclick.client.window.help.HelpText.Kind;
import thinclick.client.window.help.HelpText.Line;
import thinclick.client.window.help.HelpText.Section;
import thinclick.client.window.look.Ground;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.look.WholeLines;
import thinclick.client.window.words.Words;

/** The help as a printed page in two columns; arrows and page keys turn it. */
public final class HelpView {
  private final Words words;
  private final PagePane root = new PagePane();

  public HelpView(Words words) {
    this.words = words;
    root.setId("help");
    root.setFocusTraversable(true);
    root.setAccessibleRole(AccessibleRole.TEXT);
    // Set only when it is first turned to: the window is up sooner.
    root.sceneProperty()
        .addListener(
            (any, old, scene) -> {
              if (scene != null && root.getContent() == null) {
                set(HelpText.in(words.language()));
              }
            });
  }

  private void set(HelpText text) {
    List<Section> sections = text.sections();
    int half = (sections.size() + 1) / 2;
    Region left = column(sections.subList(0, half));
    Region right = column(sections.subList(half, sections.size()));
    Label title = styled(new Label(words.say("view.help")), "title");
    Label back = styled(Prose.of(words.say("help.back")), "soft");
    VBox sheet = styled(new VBox(title, back, new TwoColumns(left, right, 0.5, 44)), "sheet");
    sheet.getStyleClass().add("help-sheet");
    Ground page = new Ground(sheet);
    root.setContent(page);
    WholeLines.keep(root, page, sheet);
    root.setAccessibleText(spoken(text));
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Takes the focus, so that the page can be turned by its keys. */
  public void begin() {
    root.requestFocus();
  }

  private String spoken(HelpText text) {
    StringBuilder all = new StringBuilder(words.say("view.help")).append(". ");
    for (Section section : text.sections()) {
      all.append(section.title()).append(". ");
      section.lines().forEach(line -> all.append(line.text()).append(' '));
    }
    return all.toString().strip();
  }

  private static Region column(List<Section> sections) {
    VBox column = styled(styled(new VBox(), "column"), "block");
    for (Section section : sections) {
      Label head = styled(Prose.of(section.title()), "heading");
      VBox box = styled(styled(new VBox(head), "ruled"), "steps");
      section.lines().forEach(line -> box.getChildren().add(line(line)));
      column.getChildren().add(box);
    }
    return column;
  }

  private static Node line(Line line) {
    TextFlow flow = styled(new TextFlow(), "printed");
    for (HelpText.Run run : line.together()) {
      Text text = styled(new Text(run.text()), "printed-words");
      if (run.kind() != Kind.WORDS) {
        text.getStyleClass().add("strong");
      }
      flow.getChildren().add(text);
    }
    flow.setMinWidth(0);
    if (line.mark().isEmpty()) {
      return flow;
    }
    Label mark = styled(new Label(line.mark()), "printed-mark");
    mark.setMinWidth(Region.USE_PREF_SIZE);
    HBox.setHgrow(flow, Priority.ALWAYS);
    return new HBox(mark, flow);
  }
}

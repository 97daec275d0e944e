package thinclick.client.window.review;

import java.util.List;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.server.picture.PlayerSheet.Content;
import thinclick.server.picture.PlayerSheet.Section;

/**
 * The review's page: the own slip, what comes next, the own attacks, then the band; where nothing
 * was played here the band stands first.
 *
 * <p>Where several play at this computer each has such a page, from what their own connection was
 * told.
 */
public final class ReviewView {
  private final ReviewCommands commands;
  private final Words words;
  private final VBox sheet = new VBox();
  private final SectionNodes sections = new SectionNodes();
  private final Node leadersPart;
  private final Label done = Prose.in(new Label());
  private final PagePane root;
  private final FlowPane which = new FlowPane(14, 6);
  private final ToggleGroup group = new ToggleGroup();
  private final ChangeListener<@Nullable ReviewPage> onPage = (any, old, now) -> changed(old, now);
  private Palette palette = Palette.LIGHT;
  private List<Reader> readers = List.of();
  private int seen;

  /**
   * Whoever reads at this computer.
   *
   * @param name the player's, said where several read here
   */
  public record Reader(String name, ReviewModel model) {}

  /**
   * @param model of the player whose window this is
   * @param leadersPart what only the leader reads, below the rest
   */
  public ReviewView(ReviewModel model, ReviewCommands commands, Node leadersPart, Words words) {
    this.leadersPart = leadersPart;
    this.commands = commands;
    this.words = words;
    sheet.getStyleClass().addAll("sheet", "measure");
    done.setId("review-done");
    done.textProperty().bind(commands.saysProperty());
    done.managedProperty().bind(done.textProperty().isNotEmpty());
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    root = new PagePane(page);
    root.setAccessibleText(words.say("view.review"));
    which.setId("review-readers");
    readers(List.of(new Reader("", model)));
  }

  /** Those who read at this computer, the player first whose window it is. */
  public void readers(List<Reader> now) {
    readers.forEach(reader -> reader.model().pageProperty().removeListener(onPage));
    readers = List.copyOf(now);
    readers.forEach(reader -> reader.model().pageProperty().addListener(onPage));
    which.getChildren().clear();
    if (several()) {
      for (int i = 0; i < readers.size(); i++) {
        int reader = i;
        ToggleButton name = styled(new ToggleButton(readers.get(i).name()), "tab-word");
        name.setId("review-of-" + i);
        name.setToggleGroup(group);
        name.setOnAction(done -> see(reader));
        which.getChildren().add(name);
      }
    }
    seen = 0;
    show();
  }

  private boolean several() {
    return readers.size() > 1;
  }

  /** Turns to the next reader's page, or back to the one before; nothing where one reads alone. */
  public void turn(int by) {
    if (several()) {
      see(Math.floorMod(seen + by, readers.size()));
    }
  }

  private void see(int reader) {
    boolean byName = group.getToggles().stream().anyMatch(one -> ((Node) one).isFocused());
    if (reader != seen) {
      seen = reader;
      commands.silence();
      show();
      root.setVvalue(0);
    }
    Node name = which.getChildren().get(reader);
    ((ToggleButton) name).setSelected(true);
    if (byName) {
      name.requestFocus();
    }
  }

  /** A new take's slips begin with the own one. */
  private void changed(@Nullable ReviewPage old, @Nullable ReviewPage now) {
    if (now != null && now.equals(page(0)) && (old == null || !old.takeId().equals(now.takeId()))) {
      seen = 0;
    }
    show();
  }

  private @Nullable ReviewPage page(int reader) {
    return readers.get(reader).model().pageProperty().get();
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Takes the focus, so that the page can be scrolled by keys. */
  public void begin() {
    root.requestFocus();
  }

  /** Draws again in other colours. */
  public void dress(Palette wanted) {
    if (wanted != palette) {
      palette = wanted;
      show();
    }
  }

  private void show() {
    ReviewPage page = page(seen);
    sheet.getChildren().clear();
    if (several()) {
      add(new VBox(4, which, Prose.in(styled(new Label(words.say("review.readers")), "soft"))));
      ((ToggleButton) which.getChildren().get(seen)).setSelected(true);
    }
    if (page == null) {
      add(styled(new Label(words.say("review.none")), "soft"));
      return;
    }
    Content content = page.content();
    add(Prose.in(styled(new Label(content.title()), "title")));
    Label head = Prose.in(styled(new Label(content.head()), "soft"));
    head.setId("review-head");
    add(head);
    boolean drawn = content.section("attacks") != null;
    for (Section section : content.sections()) {
      add(sections.node(section, palette));
      if (section.id().equals("next-steps")) {
        add(setUp(section));
      }
      if (section.id().equals(drawn ? "attacks" : "next-steps")) {
        add(buttons(page));
        add(done);
      }
    }
    if (seen == 0) {
      add(leadersPart);
    }
  }

  /** What the lectern proposes, for whoever leads: the sentence above says it. */
  private @Nullable Node setUp(Section steps) {
    if (seen != 0 || commands.next().isEmpty()) {
      return null;
    }
    // Beside a step of one's own, the button says whose step it sets up.
    String sets = steps.says().size() > 1 ? "review.next.band" : "review.next";
    boolean changes = commands.nextChanges();
    Button set = button("review-next", changes ? sets : "review.next.again", commands::setUp);
    if (!changes && !commands.lessonStep().isEmpty()) {
      asTheLesson(set);
    }
    set.getStyleClass().add("primary");
    set.setDisable(!commands.canSetUp());
    return set;
  }

  /** In a lesson the button does what the lesson's key does, and says it in the same words. */
  private void asTheLesson(Button set) {
    Label keys = styled(new Label(words.keys("Ctrl+Enter")), "keys");
    keys.setMinWidth(Region.USE_PREF_SIZE);
    set.setText(commands.lessonStep());
    set.setAccessibleText(set.getText() + ", " + keys.getText());
    set.setGraphic(keys);
    set.setContentDisplay(ContentDisplay.RIGHT);
    set.setGraphicTextGap(8);
  }

  private Node buttons(ReviewPage page) {
    VBox lines = new VBox(10);
    if (page.canBeHeard()) {
      FlowPane listen =
          new FlowPane(
              14,
              10,
              button("listen-click", "review.listen.click", () -> commands.listen(page, false)),
              button("listen-pulse", "review.listen.pulse", () -> commands.listen(page, true)),
              button("listen-stop", "review.listen.stop", commands::silence));
      lines.getChildren().add(listen);
    }
    Reader reader = readers.get(seen);
    String whose = several() ? reader.name() : "";
    FlowPane keep =
        new FlowPane(
            14,
            10,
            button("save-pdf", "review.save.pdf", () -> commands.save(page, "pdf", whose)),
            button("save-svg", "review.save.svg", () -> commands.save(page, "svg", whose)),
            button("keep-take", "review.take", () -> commands.keepTake(reader.model(), whose)));
    lines.getChildren().add(keep);
    return lines;
  }

  private Button button(String id, String key, Runnable does) {
    Button button = new Button(words.say(key));
    button.setId(id);
    button.setOnAction(done -> does.run());
    return button;
  }

  private void add(@Nullable Node node) {
    if (node != null) {
      sheet.getChildren().add(node);
    }
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}

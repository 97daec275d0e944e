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
import thinclick.client.window.look.WholeLines;
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
  private final VBox leadersKept;
  private Runnable toCheck = () -> {};
  private final Label done = sentence();
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
   * @param leader what only the leader reads and keeps, below the rest
   */
  public ReviewView(ReviewModel model, ReviewCommands commands, LeaderView leader, Words words) {
    this.leadersPart = leader.root();
    this.leadersKept = leader.kept();
    this.commands = commands;
    this.words = words;
    sheet.getStyleClass().addAll("sheet", "measure");
    done.setId("review-done");
    done.textProperty().bind(commands.saysProperty());
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    root = new PagePane(page);
    WholeLines.keep(root, page, sheet);
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
      commands.turned();
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

  /** The way to the sound check, for whoever was not heard. */
  public void onCheck(Runnable does) {
    toCheck = does;
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
    for (Section section : content.sections()) {
      add(sections.node(section, palette));
      if (section.id().equals("next-steps")) {
        add(steps(page, section));
      }
      if (section.id().equals("attacks") && page.canBeHeard()) {
        add(listen(page));
      }
    }
    if (seen == 0) {
      add(leadersPart);
    }
    add(keep(page));
  }

  /** What is to be done next and can be done from here. */
  private @Nullable Node steps(ReviewPage page, Section steps) {
    FlowPane line = new FlowPane(14, 10);
    if (page.unheard()) {
      line.getChildren().add(check());
    }
    if (!commands.next().isEmpty()) {
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
    keys.setMinWidth(Region.USE_PREF_SIZE);
    button.setText(says);
    button.setAccessibleText(says + ", " + keys.getText());
    button.setGraphic(keys);
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.setGraphicTextGap(8);
  }

  private Node listen(ReviewPage page) {
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

  /** All that can be taken along, in one place. */
  private Node keep(ReviewPage page) {
    Reader reader = readers.get(seen);
    String whose = several() ? reader.name() : "";
    FlowPane own =
        new FlowPane(
            14,
            10,
            button("save-pdf", "review.save.pdf", () -> commands.save(page, "pdf", whose)),
            button("save-svg", "review.save.svg", () -> commands.save(page, "svg", whose)),
            button("keep-take", "review.take", () -> commands.keepTake(reader.model(), whose)));
    Label head = Prose.in(styled(new Label(words.say("review.keep")), "heading"));
    VBox keep = styled(new VBox(10, head, own, done), "ruled");
    keep.setId("review-keep");
    if (seen == 0) {
      keep.getChildren().add(leadersKept);
    }
    return keep;
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

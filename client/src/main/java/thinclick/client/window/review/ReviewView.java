package thinclick.client.window.review;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
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
  private final SectionNodes sections;
  private final Node leadersPart;
  private final KeepSection keep;
  private final ReviewButtons buttons;
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
    sections = new SectionNodes(leader.columns());
    this.commands = commands;
    this.words = words;
    sheet.getStyleClass().addAll("sheet", "measure");
    buttons = new ReviewButtons(commands, words);
    keep = new KeepSection(words.say("review.keep"), buttons.saysKept(), leader);
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
    buttons.onCheck(does);
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
        add(ending(buttons.steps(page, section)));
      }
      if (section.id().equals("attacks") && page.canBeHeard()) {
        add(ending(buttons.listen(page)));
      }
    }
    if (seen == 0) {
      add(leadersPart);
    }
    Reader reader = readers.get(seen);
    String whose = several() ? reader.name() : "";
    add(keep.of(buttons.keep(page, reader.model(), whose), seen == 0));
  }

  /** As far above the next rule as what stands below a heading. */
  private static @Nullable Node ending(@Nullable Node last) {
    return last == null ? null : styled(new VBox(last), "ends");
  }

  private void add(@Nullable Node node) {
    if (node != null) {
      sheet.getChildren().add(node);
    }
  }
}

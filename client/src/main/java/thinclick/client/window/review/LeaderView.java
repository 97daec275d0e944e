package thinclick.client.window.review;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.WideTable;
import thinclick.client.window.session.PastTakes;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.PastWords;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.Comparison;
import thinclick.server.words.Spoken;
import tools.jackson.core.JacksonException;

/** The leader's part of the review, below what all read. */
public final class LeaderView {
  private final RoleLines roles;
  private final TurnLines turns;
  private final FollowLines follows;
  private final LikeTakes likes;
  private final LeaderFiles files;
  private final Session session;
  private final Words words;
  private final SectionNodes sections = new SectionNodes();
  private final TimeLine timeLine = new TimeLine();
  private final VBox compared = new VBox(6);
  private final Label kept = new Label();
  private final VBox root = new VBox(14);
  private @Nullable Spoken shown;
  private boolean comparing;
  private Palette palette = Palette.LIGHT;

  public LeaderView(Session session, Words words) {
    this.session = session;
    this.words = words;
    roles = new RoleLines(words);
    turns = new TurnLines(words);
    follows = new FollowLines(words);
    likes = new LikeTakes(words);
    files = new LeaderFiles(words);
    kept.setWrapText(true);
    kept.managedProperty().bind(kept.textProperty().isNotEmpty());
    compared.managedProperty().bind(Bindings.isNotEmpty(compared.getChildren()));
    kept.setId("review-kept");
    root.setId("review-leader");
    root.getStyleClass().add("stacked");
    compared.getStyleClass().add("stacked");
    session
        .stateProperty()
        .addListener(
            (any, old, now) -> {
              if (!Objects.equals(old.review(), now.review()) || old.leader() != now.leader()) {
                show(now, read(now));
              }
            });
    session
        .past()
        .toldProperty()
        .addListener(
            any -> {
              if (comparing) {
                compare();
              }
            });
  }

  /** The part of the page; empty for who does not lead. */
  public VBox root() {
    return root;
  }

  /** Changes colours and the size of what is drawn. */
  public void dress(Palette wanted, double textSize) {
    timeLine.dress(wanted, textSize);
    if (wanted != palette) {
      palette = wanted;
      if (comparing) {
        compare();
      }
    }
  }

  private static @Nullable Spoken read(RoomState room) {
    try {
      return room.review() == null ? null : Spoken.fromJson(room.review().review());
    } catch (JacksonException | BadInput unreadable) {
      return null;
    }
  }

  private void show(RoomState room, @Nullable Spoken spoken) {
    root.getChildren().clear();
    compared.getChildren().clear();
    kept.setText("");
    comparing = false;
    shown = spoken;
    if (spoken == null || !room.leader()) {
      return;
    }
    Review review = spoken.review();
    Lines byRole = roles.roles(review);
    if (!byRole.lines().isEmpty()) {
      root.getChildren().add(table("leader.roles", "roles", byRole, 2, 3));
    }
    root.getChildren().add(table("leader.places", "places", roles.places(spoken), 1, 2));
    Lines answers = turns.answers(review);
    if (!answers.lines().isEmpty()) {
      root.getChildren().add(table("leader.answers", "answers", answers, 3, 4));
    }
    Lines free = turns.free(review);
    if (!free.lines().isEmpty()) {
      root.getChildren().add(table("leader.free", "free", free, 2));
    }
    root.getChildren().add(episodes(review));
    root.getChildren().add(sentences("leader.followsHead", "follows", follows.follows(review)));
    List<String> ahead = follows.ahead(review);
    if (!ahead.isEmpty()) {
      root.getChildren().add(sentences("leader.aheadHead", "ahead", ahead));
    }
    FlowPane commands =
        new FlowPane(
            14,
            10,
            button("review-pages", "leader.pages", () -> keep("pdf", files::pages)),
            button("review-csv", "leader.csv", () -> keep("csv", files::figures)),
            button("review-compare", "leader.compare", this::compare));
    root.getChildren().addAll(commands, kept, compared);
  }

  private Button button(String id, String key, Runnable does) {
    Button button = new Button(words.say(key));
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(done -> does.run());
    return button;
  }

  private Node episodes(Review review) {
    List<Episode> found = Episode.of(review, words);
    List<String> says = found.stream().map(one -> one.spoken(words)).toList();
    List<String> names = review.players().stream().map(PlayerReview::player).toList();
    int bars = review.stages().isEmpty() ? 1 : last(review);
    String none = words.say("leader.episodes.none");
    VBox box = headed(words.say("leader.episodes", Episode.steps(review, words)));
    if (!found.isEmpty()) {
      timeLine.show(names, found, bars, String.join(" ", says));
      box.getChildren().add(timeLine);
    }
    for (String sentence : says.isEmpty() ? List.of(none) : says) {
      box.getChildren().add(Prose.of(sentence));
    }
    return box;
  }

  private static int last(Review review) {
    return review.stages().get(review.stages().size() - 1).toBar();
  }

  private VBox ruled(String key) {
    return headed(words.say(key));
  }

  private static VBox headed(String says) {
    Label head = Prose.of(says);
    head.getStyleClass().add("heading");
    VBox box = new VBox(8, head);
    box.getStyleClass().add("ruled");
    return box;
  }

  private Node sentences(String key, String id, List<String> sentences) {
    VBox box = ruled(key);
    box.setId("review-" + id);
    sentences.forEach(sentence -> box.getChildren().add(Prose.of(sentence)));
    return box;
  }

  /**
   * @param figures the columns of numbers, which end in line
   */
  private Node table(String key, String id, Lines table, Integer... figures) {
    VBox box = ruled(key);
    GridPane grid = SectionNodes.grid(table.heads(), table.lines(), Set.of(figures)::contains);
    grid.setId("review-" + id);
    grid.setAccessibleText(words.say(key));
    box.getChildren().add(WideTable.of(grid));
    return box;
  }

  // ---------------------------------------------------------------- what can be done

  /** Shows what is told so far; it comes by itself soon after the review. */
  private void compare() {
    comparing = true;
    Spoken now = shown;
    PastTakes.Told told = session.past().told();
    CourseSoFar course = told.course();
    if (now == null || course == null) {
      compared.getChildren().setAll(Prose.of(words.say(PastWords.notTold(told.state()))));
      return;
    }
    Comparison comparison = LikeTakes.withLast(course, now.review());
    compared.getChildren().clear();
    if (comparison == null) {
      compared.getChildren().add(Prose.of(words.say("leader.compare.none")));
      return;
    }
    for (PlayerSheet.Section section : likes.sheet(comparison).sections()) {
      compared.getChildren().add(sections.node(section, palette));
    }
    Button keep =
        button(
            "keep-compared",
            "leader.compare.keep",
            () -> keep("pdf", any -> likes.pdf(comparison)));
    compared.getChildren().add(keep);
  }

  private void keep(String ending, Function<Spoken, byte[]> make) {
    Spoken spoken = shown;
    if (spoken == null) {
      return;
    }
    FileChooser chooser = new FileChooser();
    chooser.setInitialFileName(
        spoken.review().title().replaceAll("[^\\p{L}\\p{N}]+", "-") + "." + ending);
    File chosen = chooser.showSaveDialog(root.getScene().getWindow());
    if (chosen != null) {
      write(chosen.toPath(), make.apply(spoken));
    }
  }

  private void write(Path file, byte[] bytes) {
    try {
      Files.write(file, bytes);
      kept.setText(words.say("leader.kept", file.toString()));
    } catch (IOException unwritable) {
      kept.setText(words.say("leader.notKept", file.toString()));
    }
  }
}

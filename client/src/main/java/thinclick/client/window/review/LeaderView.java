package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.WideTable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.core.JacksonException;

/** The leader's part of the review, below what all read. */
public final class LeaderView {
  private final RoleLines roles;
  private final TurnLines turns;
  private final FollowLines follows;
  private final LeaderFiles files;
  private final Words words;
  private final TimeLine timeLine;
  private final CompareSection compared;
  private final Keeping keeping;
  private final SharedColumns columns = new SharedColumns();
  private final VBox root = new VBox(14);
  private final ObservableList<Node> kept = FXCollections.observableArrayList();

  public LeaderView(Session session, Words words) {
    this.words = words;
    roles = new RoleLines(words);
    turns = new TurnLines(words);
    follows = new FollowLines(words);
    timeLine = new TimeLine(Speaker.of(words.locale()).say("picture.bars"));
    files = new LeaderFiles(words);
    compared = new CompareSection(session.past(), words);
    keeping = new Keeping(words, "review-kept");
    root.setId("review-leader");
    root.getStyleClass().add("stacked");
    session
        .stateProperty()
        .addListener(
            (any, old, now) -> {
              if (!Objects.equals(old.review(), now.review()) || old.leader() != now.leader()) {
                show(now, read(now));
              }
            });
  }

  /** The part of the page; empty for who does not lead. */
  public VBox root() {
    return root;
  }

  /** The columns of its tables, in which those above it stand as well. */
  SharedColumns columns() {
    return columns;
  }

  /** The buttons of what the leader keeps, for the foot of the page; none for who does not lead. */
  ObservableList<Node> kept() {
    return kept;
  }

  /** What was kept last and where, a sentence. */
  Node saysKept() {
    return keeping.says();
  }

  /** Changes colours and the size of what is drawn. */
  public void dress(Palette wanted, double textSize) {
    timeLine.dress(wanted, textSize);
    compared.dress(wanted);
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
    kept.clear();
    keeping.clear();
    compared.of(spoken == null ? null : spoken.review());
    if (spoken != null && room.leader()) {
      figures(spoken);
      root.getChildren().add(compared.box());
      commands(spoken);
    }
  }

  private void figures(Spoken spoken) {
    Review review = spoken.review();
    Lines byRole = roles.roles(review);
    if (!byRole.lines().isEmpty()) {
      root.getChildren().add(table("leader.roles", "roles", byRole, 1, 2));
    }
    root.getChildren().add(table("leader.places", "places", roles.places(spoken), 1, 2));
    Lines answers = turns.answers(review);
    if (!answers.lines().isEmpty()) {
      root.getChildren().add(table("leader.answers", "answers", answers, 1, 2, 3));
    }
    Lines free = turns.free(review);
    if (!free.lines().isEmpty()) {
      root.getChildren().add(table("leader.free", "free", free, 1, 2));
    }
    root.getChildren().add(episodes(review));
    List<String> ahead = follows.ahead(review);
    if (ahead.isEmpty() && review.players().size() > 1) {
      ahead = List.of(words.say("leader.ahead.band"));
    }
    root.getChildren().add(sentences("leader.followsHead", "follows", follows.follows(review)));
    if (!ahead.isEmpty()) {
      root.getChildren().add(sentences("leader.aheadHead", "ahead", ahead));
    }
  }

  private void commands(Spoken spoken) {
    Review review = spoken.review();
    String title = review.title();
    List<Node> commands = new ArrayList<>();
    if (review.players().stream().anyMatch(player -> !player.standIn())) {
      commands.add(
          keeping.button(
              "review-pages",
              "leader.pages",
              () -> keeping.keep(title, "pdf", () -> files.pages(spoken))));
    }
    commands.add(
        keeping.button(
            "review-csv",
            "leader.csv",
            () -> keeping.keep(title, "csv", () -> files.figures(spoken))));
    kept.setAll(commands);
  }

  private Node episodes(Review review) {
    List<Episode> found = Episode.of(review, words);
    List<String> says = found.stream().map(Episode::says).toList();
    List<String> names = review.players().stream().map(PlayerReview::player).toList();
    String none = words.say("leader.episodes.none");
    VBox box = headed(words.say("leader.episodes", Episode.steps(review, words)));
    if (!found.isEmpty()) {
      timeLine.show(names, found, Episode.bars(review), String.join(" ", says));
      box.getChildren().add(timeLine);
    }
    for (String sentence : says.isEmpty() ? List.of(none) : says) {
      box.getChildren().add(Prose.of(sentence));
    }
    return box;
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
    GridPane grid = columns.table(table.heads(), table.lines(), Set.of(figures)::contains);
    grid.setId("review-" + id);
    grid.setAccessibleText(words.say(key));
    box.getChildren().add(WideTable.of(grid));
    if (table.lines().stream().anyMatch(line -> line.contains(RoleLines.NOTHING))) {
      box.getChildren().add(SectionNodes.note(words.say("leader.nothing.note", RoleLines.NOTHING)));
    }
    return box;
  }
}

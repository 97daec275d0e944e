package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.server.material.WrittenPart;

/**
 * The players' page: the part of each chair at this computer, one below the other as many as are
 * read well, or one chosen, with the count above them.
 */
public final class StandView {
  private static final double WORDS_SHARE = 0.28;

  /** Lower than so many ems a page has no room for words beside the music. */
  private static final double BRIEF_EMS = 26;

  /**
   * Whoever reads at this computer.
   *
   * @param name the player's, said where several read here
   */
  public record Reader(String name, StandModel model) {}

  private final Words words;
  private final List<PartSheet> parts = new ArrayList<>();
  private final Label title = styled(new Label(), "heading");
  private final Label note = styled(new Label(), "stand-note");
  private final Label count = styled(new Label(), "count");
  private final Label countdown = styled(new Label(), "soft");
  private final Label empty = styled(new Label(), "empty-sheet");
  private final Label legend = styled(new Label(), "soft");
  private final Label spoken = new Label();
  private final ScrollPane partInWords = new ScrollPane(spoken);
  private final FlowPane which = new FlowPane(4, 4);
  private final VBox left = new VBox(2);
  private final Label inView = wrapped(styled(new Label(), "soft"));
  private final ToggleGroup whose = new ToggleGroup();
  private final ReaderPages pages = new ReaderPages();
  private final ChangeListener<RoomState> onRoom = (any, old, now) -> fit();
  private final VBox scores = styled(new VBox(), "sheet");
  private final BorderPane root = new BorderPane();

  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private boolean offered;
  private List<Reader> readers = List.of();
  private List<List<Integer>> shown = List.of();

  /**
   * @param model of the player whose window this is
   */
  public StandView(StandModel model, Words words) {
    this.words = words;
    createView();
    readers(List.of(new Reader("", model)));
    model.roomProperty().addListener((any, old, now) -> show(now));
    model.momentProperty().addListener((any, old, now) -> show(now));
    show(model.roomProperty().get());
    show(TakeMoment.NONE);
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Takes the focus, so that no control keeps it during a take. */
  public void begin() {
    root.requestFocus();
  }

  /** Those who read at this computer, the player first whose window it is. */
  public void readers(List<Reader> now) {
    readers.forEach(reader -> reader.model().roomProperty().removeListener(onRoom));
    readers = List.copyOf(now);
    readers.forEach(reader -> reader.model().roomProperty().addListener(onRoom));
    pages.readers(readers.size());
    shown = List.of();
    offerParts();
    fit();
  }

  /** Turns to the parts that are not in view; where all are, to the next reader's alone. */
  public void turn(int by) {
    pages.turn(by);
    arrange();
  }

  /** Words to choose a part by, where there are several. */
  private void offerParts() {
    which.getChildren().clear();
    for (int i = ReaderPages.ALL; readers.size() > 1 && i < readers.size(); i++) {
      int part = i;
      String said = i == ReaderPages.ALL ? words.say("stand.all") : readers.get(i).name();
      ToggleButton word = styled(new ToggleButton(said), "tab-word");
      word.setId(i == ReaderPages.ALL ? "stand-all" : "stand-part-" + i);
      word.setToggleGroup(whose);
      word.setOnAction(
          done -> {
            pages.choose(part);
            arrange();
            begin();
          });
      which.getChildren().add(word);
    }
  }

  /** Looks whether the parts still fit as they stand. */
  private void fit() {
    if (readers.size() > 1) {
      Insets around = scores.getInsets();
      pages.fit(
          readers.stream()
              .<@Nullable WrittenPart>map(reader -> reader.model().written(words.language()))
              .toList(),
          scores.getWidth() - around.getLeft() - around.getRight() - PartSheet.besideMusic(scale),
          scores.getHeight() - around.getTop() - around.getBottom(),
          scores.getSpacing(),
          scale);
    }
    arrange();
  }

  private void arrange() {
    if (!shown.equals(pages.shown())) {
      shown = pages.shown();
      parts.forEach(PartSheet::close);
      parts.clear();
      for (List<Integer> line : shown) {
        List<Reader> together = line.stream().map(readers::get).toList();
        PartSheet part = new PartSheet(together, parts.isEmpty(), words.language());
        part.dress(palette, scale);
        part.brief(brief());
        parts.add(part);
      }
      left.getChildren().setAll(title);
      scores.getChildren().clear();
      if (readers.size() > 1) {
        left.getChildren().addAll(which, inView);
      }
      if (pages.alone()) {
        Node sheet = parts.get(0).alone(left);
        VBox.setVgrow(sheet, Priority.ALWAYS);
        scores.getChildren().add(sheet);
      }
    }
    if (!pages.alone()) {
      List<Node> rows = new ArrayList<>();
      for (int i = 0; i < parts.size(); i++) {
        rows.add(parts.get(i).amongOthers(scale, pages.leastHeight(shown.get(i), i == 0)));
      }
      scores.getChildren().setAll(rows);
    }
    if (readers.size() > 1) {
      ((ToggleButton) which.getChildren().get(pages.chosen() + 1)).setSelected(true);
    }
    boolean paged = pages.several() && !pages.alone();
    List<Integer> here = shown.stream().flatMap(List::stream).toList();
    inView.setText(paged ? words.say("stand.shown", names(here), names(pages.next())) : "");
    speak();
  }

  private String names(List<Integer> who) {
    return who.stream().map(one -> readers.get(one).name()).collect(Collectors.joining(", "));
  }

  /**
   * Paints again in other colours or another size.
   *
   * @param inWords whether the part stands below the music in words
   */
  public void dress(Palette wanted, double textScale, boolean inWords) {
    palette = wanted;
    scale = textScale;
    parts.forEach(part -> part.dress(wanted, textScale));
    shorten();
    fit();
    partInWords.setVisible(inWords);
  }

  /** Music that can be read comes before the words beside it. */
  private void shorten() {
    boolean brief = brief();
    parts.forEach(part -> part.brief(brief));
    if (brief != root.getStyleClass().contains("brief")) {
      root.getStyleClass().remove("brief");
      if (brief) {
        root.getStyleClass().add("brief");
      }
    }
    countdown.setVisible(!brief); // the sentence at the bottom says it as well
    countdown.setManaged(!brief);
    legend.setManaged(!brief);
    legend.setVisible(offered && !brief);
  }

  private boolean brief() {
    return root.getHeight() > 0 && root.getHeight() < BRIEF_EMS * Look.USUAL_TEXT * scale;
  }

  private void createView() {
    root.getStyleClass().addAll("page", "stand");
    root.setFocusTraversable(true);
    root.setAccessibleRole(AccessibleRole.TEXT);
    root.accessibleTextProperty()
        .bind(
            Bindings.concat(
                title.textProperty(),
                ". ",
                note.textProperty(),
                " ",
                empty.textProperty(),
                " ",
                spoken.textProperty()));
    note.setId("stand-note");
    note.setWrapText(true);
    note.managedProperty().bind(note.visibleProperty());
    title.setId("stand-title");
    title.setWrapText(true);
    left.setId("stand-words");
    count.setId("count");
    countdown.setId("countdown");
    VBox head = new VBox(left, note);
    HBox.setHgrow(head, Priority.ALWAYS);
    VBox right = new VBox(0, count, countdown);
    right.setAlignment(Pos.TOP_RIGHT);
    right.setMinWidth(Region.USE_PREF_SIZE);
    HBox top = styled(new HBox(24, head, right), "stand-top");
    legend.setWrapText(true);
    legend.setText(words.say("stand.legend"));
    scores.setMinHeight(0);
    root.heightProperty().addListener(any -> shorten());
    scores.heightProperty().addListener(any -> fit());
    scores.widthProperty().addListener(any -> fit());
    inView.setId("stand-in-view");
    inView.managedProperty().bind(inView.textProperty().isNotEmpty());
    root.setTop(top);
    root.setCenter(new StackPane(scores, empty));
    spoken.setId("part-words");
    spoken.setWrapText(true);
    partInWords.setFitToWidth(true);
    partInWords.setVisible(false);
    partInWords.managedProperty().bind(partInWords.visibleProperty());
    partInWords.maxHeightProperty().bind(root.heightProperty().multiply(WORDS_SHARE));
    root.setBottom(styled(new VBox(8, partInWords, legend), "stand-bottom"));
  }

  private void show(RoomState room) {
    Dealt dealt = room.dealt();
    boolean nothing = dealt == null;
    empty.setVisible(nothing);
    String why = words.say(room.leader() ? "stand.empty.leader" : "stand.empty");
    empty.setText(nothing ? why : "");
    offered = !nothing && !room.takeRuns();
    shorten();
    title.setText(
        dealt == null
            ? ""
            : words.say(
                "stand.title", dealt.title(), dealt.meter().toString(), Math.round(dealt.tempo())));
    // What is written while a take runs is read when it is over: the page stays as it is played.
    if (!room.takeRuns()) {
      note.setText(room.note().isEmpty() ? "" : words.say("situation.note", room.note()));
      note.setVisible(!note.getText().isEmpty());
    }
    speak();
  }

  /** The parts in view as they are said. */
  private void speak() {
    spoken.setText(
        parts.stream()
            .map(part -> (part.says() + " " + part.spoken()).strip())
            .filter(said -> !said.isEmpty())
            .collect(Collectors.joining("\n")));
  }

  private void show(TakeMoment moment) {
    switch (moment.part()) {
      case NONE, OVER -> tell("", "");
      case BEFORE -> tell("", words.say("stand.before", moment.secondsToCountIn()));
      case COUNT_IN -> tell(Integer.toString(moment.count()), words.say("stand.countIn"));
      case PLAYING ->
          tell(
              words.say("stand.bar", moment.bar() + 1),
              moment.barsToNextStage() == 0
                  ? words.say("stand.last")
                  : words.say("stand.changes", moment.barsToNextStage()));
    }
  }

  private void tell(String large, String small) {
    boolean counting = large.length() == 1;
    if (counting != count.getStyleClass().contains("count-in")) {
      count.getStyleClass().setAll("label", counting ? "count-in" : "count");
    }
    count.setText(large);
    countdown.setText(small);
  }

  private static Label wrapped(Label label) {
    label.setWrapText(true);
    return label;
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}

package thinclick.client.window.stand;

import java.util.List;
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
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
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
import thinclick.client.window.stand.ScoreSheet.Leaf;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.material.WrittenPart;

/**
 * The players' page: the parts of the chairs at this computer, as many below each other as are read
 * well, or one chosen, with the count above them. It has the same layout from the deal to the end
 * of the take, so that music stays where it was read first.
 */
public final class StandView {
  private static final double WORDS_SHARE = 0.28;

  /** So many lines of words stand there wherever they are wanted; more where the music is large. */
  private static final double LEAST_LINES = 2;

  /** Lower than so many ems a page has no room for words beside the music. */
  private static final double BRIEF_EMS = 26;

  /**
   * Whoever reads at this computer.
   *
   * @param name the player's, said where several read here
   */
  public record Reader(String name, StandModel model) {}

  private final Words words;
  private final Label title = styled(new Label(), "heading");
  private final TitleSize titleSize = new TitleSize();
  private final Label note = styled(new Label(), "stand-note");
  private final Label count = styled(new Label(), "count");
  private final Label countdown = styled(new Label(), "soft");

  /** Which bars are in view, where the page has no room for a line below the count. */
  private final Label pageBriefly = styled(new Label(), "soft");

  private final Label empty = styled(new Label(), "empty-sheet");
  private final Label read = styled(new Label(), "soft");
  private final Label says = wrapped(new Label());
  private final MarkLegend legend;

  /** In the title's place while marks come and are read, where the page has no room below. */
  private final MarkLegend briefLegend;

  private final WrappedWords titled;
  private final Label spoken = new Label();
  private final ScrollPane partInWords = new ScrollPane(spoken);
  private final PartTabs which = styled(new PartTabs(), "stand-whose");
  private final FlowPane titleLine = styled(new FlowPane(), "stand-line");
  private final WrappedWords saysWrapped = new WrappedWords(says);
  private final FlowPane partLine = styled(new FlowPane(read, saysWrapped), "stand-line");
  private final Label inView = wrapped(new Label());
  private final ToggleGroup whose = new ToggleGroup();
  private final ReaderPages pages = new ReaderPages();
  private final ChangeListener<RoomState> onRoom = (any, old, now) -> fit();
  private final ChangeListener<Leaf> onLeaf = (any, old, now) -> tellPage(now);
  private final ChangeListener<Number> onSpace = (any, old, now) -> enlargeTitle();
  private final BorderPane scores = styled(new BorderPane(), "sheet");
  private final BorderPane root = new BorderPane();

  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private List<Reader> readers = List.of();
  private List<List<Integer>> shown = List.of();
  private @Nullable PartSheet part;
  private String pageSaid = "";

  /** From the take's beginning until the next deal. */
  private boolean marked;

  /**
   * @param model of the player whose window this is
   */
  public StandView(StandModel model, Words words) {
    this.words = words;
    legend = new MarkLegend(words, false);
    briefLegend = new MarkLegend(words, true);
    titled = new WrappedWords(title, briefLegend.root());
    briefLegend.within(title);
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

  /** A staff space of the music in view, pixels; 0 where nothing is dealt. */
  public double staffSpace() {
    return part == null ? 0 : part.spaceProperty().get();
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

  /** Turns over a page of a part that is longer than one, before a take and after it. */
  private void leaf(int by) {
    if (part != null) {
      part.leaf(by);
    }
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
    placeParts();
  }

  /**
   * The words to choose a part by begin the line below the title, whose size may differ from part
   * to part; where there is no room for that line, they stand after the title.
   */
  private void placeParts() {
    boolean several = !which.getChildren().isEmpty();
    boolean after = several && brief();
    boolean below = several && !after;
    titleLine.getChildren().setAll(titled);
    partLine.getChildren().setAll(read, saysWrapped);
    if (after) {
      titleLine.getChildren().add(which);
    } else if (below) {
      partLine.getChildren().add(0, which);
    }
  }

  /** Looks whether the parts still fit as they stand. */
  private void fit() {
    if (readers.size() > 1) {
      Insets around = scores.getInsets();
      pages.fit(
          dealt(),
          scores.getWidth() - around.getLeft() - around.getRight(),
          scores.getHeight() - around.getTop() - around.getBottom(),
          scale);
    }
    arrange();
  }

  private List<@Nullable WrittenPart> dealt() {
    return readers.stream()
        .<@Nullable WrittenPart>map(reader -> reader.model().written(words.language()))
        .toList();
  }

  private List<Beside> beside(List<List<List<Integer>>> others) {
    List<@Nullable WrittenPart> dealt = others.isEmpty() ? List.of() : dealt();
    return others.stream().map(page -> Beside.of(page, dealt)).toList();
  }

  private void arrange() {
    PartSheet now = part == null || !shown.equals(pages.shown()) ? turned() : part;
    now.beside(beside(pages.others()), beside(pages.score()));
    if (readers.size() > 1) {
      ((ToggleButton) which.getChildren().get(pages.chosen() + 1)).setSelected(true);
    }
    boolean paged = pages.several() && !pages.alone();
    List<Integer> here = shown.stream().flatMap(List::stream).toList();
    inView.setText(paged ? words.say("stand.shown", names(here), names(pages.elsewhere())) : "");
    speak();
  }

  private PartSheet turned() {
    shown = pages.shown();
    if (part != null) {
      part.leafProperty().removeListener(onLeaf);
      part.spaceProperty().removeListener(onSpace);
      part.close();
    }
    PartSheet made =
        new PartSheet(
            shown.stream().map(line -> line.stream().map(readers::get).toList()).toList(),
            pages.alone(),
            words);
    made.dress(palette, scale);
    made.leafProperty().addListener(onLeaf);
    made.spaceProperty().addListener(onSpace);
    made.onWritten(this::speak);
    part = made;
    scores.setCenter(made.root());
    tellPage(made.leafProperty().get());
    return made;
  }

  private String names(List<Integer> who) {
    List<String> names = who.stream().map(one -> readers.get(one).name()).toList();
    int last = names.size() - 1;
    return last < 1
        ? String.join("", names)
        : words.say("stand.names", String.join(", ", names.subList(0, last)), names.get(last));
  }

  /**
   * Paints again in other colours or another size.
   *
   * @param inWords whether the part stands below the music in words
   */
  public void dress(Palette wanted, double textScale, boolean inWords) {
    palette = wanted;
    scale = textScale;
    if (part != null) {
      part.dress(wanted, textScale);
    }
    enlargeTitle();
    legend.dress(wanted, textScale);
    briefLegend.dress(wanted, textScale);
    shorten();
    fit();
    partInWords.setVisible(inWords);
  }

  /** Music that can be read comes before the words beside it. */
  private void shorten() {
    boolean brief = brief();
    if (brief != root.getStyleClass().contains("brief")) {
      root.getStyleClass().remove("brief");
      if (brief) {
        root.getStyleClass().add("brief");
      }
      placeParts();
    }
    countdown.setVisible(!brief); // the sentence at the bottom says it as well
    countdown.setManaged(!brief);
    pageBriefly.setVisible(brief);
    pageBriefly.setManaged(brief);
    partLine.setVisible(!brief);
    legend.root().setManaged(!brief);
    legend.root().setVisible(!brief && !empty.isVisible());
    briefLegend.root().setManaged(brief);
    briefLegend.root().setVisible(brief && marked);
    title.setVisible(!brief || !marked);
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
    titled.setAlignment(Pos.CENTER_LEFT);
    title.setId("stand-title");
    title.setWrapText(true);
    read.setId("stand-read");
    says.setId("stand-says");
    partLine
        .managedProperty()
        .bind(
            partLine
                .visibleProperty()
                .and(
                    read.textProperty()
                        .isNotEmpty()
                        .or(says.textProperty().isNotEmpty())
                        .or(which.parentProperty().isEqualTo(partLine))));
    count.setId("count");
    countdown.setId("countdown");
    pageBriefly.setId("stand-page");
    VBox head = new VBox(2, titleLine, inView, partLine, note);
    head.setId("stand-words");
    HBox.setHgrow(head, Priority.ALWAYS);
    wrapWithin(head);
    Region strut = styled(new Region(), "stand-strut"); // so that no word of it moves the music
    // As high for a count as for nothing.
    HBox counted = styled(new HBox(count, pageBriefly), "stand-count");
    counted.setFillHeight(false);
    VBox right = new VBox(0, strut, counted, countdown);
    right.setAlignment(Pos.TOP_RIGHT);
    right.setMinWidth(Region.USE_PREF_SIZE);
    HBox top = styled(new HBox(16, head, right), "stand-top");
    scores.setMinHeight(0);
    root.heightProperty().addListener(any -> shorten());
    scores.heightProperty().addListener(any -> fit());
    scores.widthProperty().addListener(any -> fit());
    inView.setId("stand-in-view");
    inView.managedProperty().bind(inView.textProperty().isNotEmpty());
    root.addEventHandler(KeyEvent.KEY_PRESSED, this::turnsPages);
    root.setTop(top);
    root.setCenter(new StackPane(scores, empty));
    spoken.setId("part-words");
    spoken.setWrapText(true);
    partInWords.setFitToWidth(true);
    partInWords.setVisible(false);
    partInWords.managedProperty().bind(partInWords.visibleProperty());
    partInWords
        .maxHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                this::wholeLines,
                root.heightProperty(),
                spoken.fontProperty(),
                spoken.textProperty(),
                partInWords.insetsProperty()));
    root.setBottom(styled(new VBox(8, partInWords, legend.root()), "stand-bottom"));
  }

  /** Words too long for the page take another line: they hold no page wider than its window. */
  private void wrapWithin(VBox head) {
    root.setMinWidth(0);
    head.setMinWidth(0);
    titleLine.setMinWidth(0);
    partLine.setMinWidth(0);
    titled.within(head);
    saysWrapped.within(head);
  }

  /** As high as the words' share of the page, and no line of them cut through. */
  private double wholeLines() {
    double each = spoken.prefHeight(-1) / Math.max(1, spoken.getText().lines().count());
    double around = partInWords.getInsets().getTop() + partInWords.getInsets().getBottom();
    double lines = Math.floor((root.getHeight() * WORDS_SHARE - around) / each);
    return around + (brief() ? LEAST_LINES : Math.max(LEAST_LINES, lines)) * each;
  }

  private void turnsPages(KeyEvent event) {
    if (event.getCode() == KeyCode.PAGE_DOWN || event.getCode() == KeyCode.PAGE_UP) {
      leaf(event.getCode() == KeyCode.PAGE_DOWN ? 1 : -1);
      event.consume();
    }
  }

  private void show(RoomState room) {
    Dealt dealt = room.dealt();
    boolean nothing = dealt == null;
    empty.setVisible(nothing);
    String why = words.say(room.leader() ? "stand.empty.leader" : "stand.empty");
    empty.setText(nothing ? why : "");
    legend.takeOver(room.phase() == Phase.REVIEW);
    marked = !nothing && (room.takeRuns() || room.phase() == Phase.REVIEW);
    shorten();
    title.setText(
        dealt == null
            ? ""
            : words.say(
                "stand.title", dealt.title(), dealt.meter().toString(), Math.round(dealt.tempo())));
    enlargeTitle();
    // What is written while a take runs is read when it is over: the page stays as it is played.
    if (!room.takeRuns()) {
      note.setText(room.note().isEmpty() ? "" : words.say("situation.note", room.note()));
      note.setVisible(!note.getText().isEmpty());
    }
    speak();
  }

  private void enlargeTitle() {
    titleSize.fit(title, root, scale, staffSpace());
  }

  /** The parts in view as they are read and said. */
  private void speak() {
    boolean one = part != null && pages.alone();
    read.setText(part == null ? "" : part.read());
    says.setText(one && part != null ? part.says() : "");
    spoken.setText(part == null ? "" : part.spoken());
    legend.others(part != null && part.withOthers());
  }

  /** Where nobody counts, which bars are in view: pages may have a bar in common. */
  private void tellPage(Leaf leaf) {
    legend.atOnce(leaf.keepsOver());
    boolean several = leaf.pages() > 1 && count.getText().isEmpty();
    int from = leaf.firstBar() + 1;
    int bars = Math.min(3, leaf.endBar() - leaf.firstBar());
    String key = leaf.last() ? "stand.page.last" : "stand.page";
    String said = several ? words.say(key, from, leaf.endBar(), bars, leaf.bars()) : "";
    if (several || countdown.getText().equals(pageSaid)) {
      countdown.setText(said);
    }
    pageSaid = said;
    pageBriefly.setText(
        several ? words.say("stand.page.brief", from, leaf.endBar(), Math.min(2, bars)) : "");
  }

  private void show(TakeMoment moment) {
    switch (moment.part()) {
      case NONE, OVER -> {
        tell("", "");
        tellPage(part == null ? Leaf.NONE : part.leafProperty().get());
      }
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
    pageBriefly.setText("");
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

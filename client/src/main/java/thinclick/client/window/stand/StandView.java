package thinclick.client.window.stand;

import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;

/**
 * The players' page: the parts of the chairs at this computer, as many below each other as are read
 * well, or one chosen, with the count above them. It has the same layout from the deal to the end
 * of the take, so that music stays where it was read first.
 */
public final class StandView {
  /** Lower than so many ems a page has no room for words beside the music. */
  private static final double BRIEF_EMS = 26;

  /**
   * Whoever reads at this computer.
   *
   * @param name the player's, said where several read here
   */
  public record Reader(String name, StandModel model) {}

  private final StandModel own;
  private final Words words;
  private final StandWords says;
  private final ReaderChoice choice;
  private final StandHead head;
  private final MarkLegend legend;
  private final Label empty = new Label();
  private final BorderPane scores = new BorderPane();
  private final BorderPane root = new BorderPane();
  private final PartInWords inWords = new PartInWords(root);
  private final PartsInView parts;

  private double scale = 1;

  /**
   * @param model of the player whose window this is
   */
  public StandView(StandModel model, Words words) {
    this.own = model;
    this.words = words;
    says = new StandWords(words);
    choice = new ReaderChoice(words);
    head = new StandHead(choice, words);
    legend = new MarkLegend(words, false);
    parts = new PartsInView(scores, words, this::lookAtParts);
    createView();
    readers(List.of(new Reader("", model)));
    model.roomProperty().addListener((any, old, now) -> show(now));
    model.momentProperty().addListener((any, old, now) -> tell());
    show(model.roomProperty().get());
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** A staff space of the music in view, pixels; 0 where nothing is dealt. */
  public double staffSpace() {
    PartSheet part = parts.part();
    return part == null ? 0 : part.spaceProperty().get();
  }

  /** Takes the focus, so that no control keeps it during a take. */
  public void begin() {
    root.requestFocus();
  }

  /** Those who read at this computer, the player first whose window it is. */
  public void readers(List<Reader> now) {
    choice.offer(now.stream().map(Reader::name).toList(), this::choose);
    head.place();
    parts.readers(now);
  }

  private void choose(int reader) {
    parts.choose(reader);
    begin();
  }

  /** Turns to the parts that are not in view; where all are, to the next reader's alone. */
  public void turn(int by) {
    parts.turn(by);
  }

  /**
   * Paints again in other colours or another size.
   *
   * @param wordsWanted whether the part stands below the music in words
   */
  public void dress(Palette wanted, double textScale, boolean wordsWanted) {
    scale = textScale;
    legend.dress(wanted, textScale);
    head.dress(wanted, textScale);
    shorten();
    parts.dress(wanted, textScale);
    inWords.show(wordsWanted);
  }

  private void createView() {
    root.getStyleClass().addAll("page", "stand");
    root.setMinWidth(0);
    root.setFocusTraversable(true);
    root.setAccessibleRole(AccessibleRole.TEXT);
    root.accessibleTextProperty()
        .bind(
            Bindings.concat(
                head.titleProperty(),
                ". ",
                head.noteProperty(),
                " ",
                empty.textProperty(),
                " ",
                inWords.textProperty()));
    scores.getStyleClass().add("sheet");
    scores.setMinHeight(0);
    empty.getStyleClass().add("empty-sheet");
    root.heightProperty().addListener(any -> shorten());
    root.addEventHandler(KeyEvent.KEY_PRESSED, this::turnsPages);
    root.setTop(head.root());
    root.setCenter(new StackPane(scores, empty));
    VBox bottom = new VBox(8, inWords.root(), legend.root());
    bottom.getStyleClass().add("stand-bottom");
    root.setBottom(bottom);
  }

  private void turnsPages(KeyEvent event) {
    if (event.getCode() == KeyCode.PAGE_DOWN || event.getCode() == KeyCode.PAGE_UP) {
      PartSheet part = parts.part();
      if (part != null) {
        part.leaf(event.getCode() == KeyCode.PAGE_DOWN ? 1 : -1);
      }
      event.consume();
    }
  }

  /** Music that can be read comes before the words beside it. */
  private void shorten() {
    boolean brief = root.getHeight() > 0 && root.getHeight() < BRIEF_EMS * Look.USUAL_TEXT * scale;
    if (brief != root.getStyleClass().contains("brief")) {
      root.getStyleClass().remove("brief");
      if (brief) {
        root.getStyleClass().add("brief");
      }
    }
    head.brief(brief);
    inWords.brief(brief);
    legend.root().setManaged(!brief && !empty.isVisible());
    legend.root().setVisible(!brief && !empty.isVisible());
  }

  private void show(RoomState room) {
    Dealt dealt = room.dealt();
    boolean nothing = dealt == null;
    empty.setVisible(nothing);
    String why = words.say(room.leader() ? "stand.empty.leader" : "stand.empty");
    empty.setText(nothing ? why : "");
    legend.takeOver(room.phase() == Phase.REVIEW);
    shorten();
    head.title(says.title(dealt), dealt == null ? "" : dealt.title());
    // What is written while a take runs is read when it is over: the page stays as it is played.
    if (!room.takeRuns()) {
      head.note(room.note().isEmpty() ? "" : words.say("situation.note", room.note()));
    }
    // With nothing to read the sheet has the place of its head, too.
    head.show(!nothing || !room.note().isEmpty());
    lookAtParts();
  }

  /** The parts in view as they are read and said. */
  private void lookAtParts() {
    PartSheet part = parts.part();
    if (part != null) {
      head.part(parts.words(), parts.inTurn(), parts.alone() ? part.entry(says) : "");
      inWords.say(part.spoken());
      legend.others(part.withOthers(), part.leafProperty().get().withOthers());
    }
    choice.choose(parts.chosen());
    head.inView(parts.whose());
    boolean entry = choice.isEmpty() || parts.alone();
    head.comesIn(!entry || own.roomProperty().get().phase() != Phase.REVIEW);
    tell();
  }

  /** Where the take is, and which page is in view. */
  private void tell() {
    RoomState room = own.roomProperty().get();
    TakeMoment moment = own.momentProperty().get();
    PartSheet part = parts.part();
    Leaf leaf = part == null ? Leaf.NONE : part.leafProperty().get();
    legend.atOnce(leaf.keepsOver());
    head.tell(says.where(moment, leaf, !choice.isEmpty()));
    boolean entered = part != null && moment.bar() > part.entryBar();
    head.marked(room.dealt() != null && (entered || room.phase() == Phase.REVIEW));
  }
}

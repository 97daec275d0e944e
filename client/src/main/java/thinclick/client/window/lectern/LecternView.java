package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.value.ObservableValue;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.WrappedWords;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;

/** The prompt book: what to do now, roster, material, click plan and page. */
public final class LecternView {
  private static final int FEWEST_DRILLS = 8;

  /** A row of a list, all else of the page above and below the drills, its margin; in ems. */
  private static final double ROW_EMS = 2;

  private static final double OTHER_EMS = 13.9;
  private static final double MARGIN_EMS = 1.8;

  /** A page narrower than this leaves the sheet so few commands a row that its lines are tight. */
  private static final double TIGHT_EMS = 72;

  private static final PseudoClass TIGHT = PseudoClass.getPseudoClass("tight");

  private final LecternDesk desk;
  private final Words words;
  private final NowView now;
  private final RosterView roster;
  private final MaterialView material;
  private final PlanView plan;
  private final PageView page;
  private final Label pageHead = styled(new Label(), "heading");
  private final ObservableValue<RoomState> room;
  private final Label waits;
  private final VBox wayIn = new VBox(8);
  private final VBox middle;
  private final FlowPane head = styled(new FlowPane(), "lectern-ways");
  private final PromptBook book;
  private final VBox content;
  private final ScrollPane root;
  private double em = Look.USUAL_TEXT;

  /**
   * @param soon on the window's thread, once what is being done there is done
   */
  public LecternView(
      LecternDesk desk, Words words, ObservableValue<RoomState> room, Executor soon) {
    this.desk = desk;
    this.room = room;
    now = new NowView(words, desk);
    roster = new RosterView(desk.roster(), words, soon);
    material = new MaterialView(desk, words, soon);
    plan = new PlanView(desk, words);
    page = new PageView(words);
    this.words = words;
    waits = styled(Prose.of(words.say("lectern.choose.what")), "soft");
    wayIn.getChildren().setAll(styled(new Label(words.say("lectern.invite")), "heading"));
    wayIn.getStyleClass().add("lectern-way-in");
    WrappedWords title = new WrappedWords(plan.title());
    head.getChildren().setAll(title);
    head.setMinWidth(0); // a long title goes on in another line
    title.maxWidthProperty().bind(head.widthProperty());
    VBox sheet =
        styled(
            new VBox(12, wayIn, head, now.root(), waits, plan.root(), pageHead, page.root()),
            "sheet");
    sheet.getStyleClass().add("lectern-right");
    VBox left = styled(new VBox(22, material.lessons(), roster.root()), "lectern-left");
    middle = styled(new VBox(material.root()), "lectern-middle");
    book = new PromptBook(left, middle, sheet, 30);
    book.columnsProperty().addListener(any -> soon.execute(this::followColumns));
    middle.layoutYProperty().addListener(any -> soon.execute(this::followHead));
    content = styled(new VBox(book), "page");
    content.getStyleClass().add("lectern-page");
    root = new ScrollPane(content);
    root.setFitToWidth(true);
    root.setFocusTraversable(false);
    WholeAtEdges.keep(root, material.kept());
    material.onChosen(() -> soon.execute(this::turnToWhatWasChosen));
    root.viewportBoundsProperty().addListener(any -> fill());
    root.viewportBoundsProperty().addListener(any -> soon.execute(this::followHead));
    content.insetsProperty().addListener(any -> fill());
    room.addListener((any, old, after) -> show());
    desk.lectern().changesProperty().addListener(any -> show());
    desk.lesson().changesProperty().addListener(any -> show());
    desk.roster().leaderPlaysProperty().addListener(any -> show());
    desk.classes().seasonProperty().addListener(any -> show());
    show();
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the cursor where one begins. */
  public void begin() {
    material.begin();
  }

  /** Goes to the drills. */
  public void toDrills() {
    material.toDrills();
  }

  /** Goes to what is composed. */
  public void toCompose() {
    material.toCompose();
  }

  /** Where the drills stand further down, the ways to them are at the head of the page. */
  private void followColumns() {
    int columns = book.columnsProperty().get();
    now.oneColumn(columns == 1);
    material.ways(columns == 3 ? null : columns == 2 ? material.lessonHeads() : head);
    followHead();
  }

  /** The ways lead to what is not in view before the page is moved. */
  private void followHead() {
    double ends = book.getLayoutY() + middle.getLayoutY() + material.headEnds();
    boolean inView = ends < root.getViewportBounds().getHeight();
    material.waysWanted(book.columnsProperty().get() != 2 || !inView);
  }

  /** Changes colours and the size of what is drawn. */
  public void dress(Palette palette, double textSize, double usualSize) {
    em = textSize;
    fill();
    plan.dress(palette, textSize);
    page.dress(palette, textSize / usualSize);
  }

  /** Drills and sheet reach to the foot of the window; both margins are of one width. */
  private void fill() {
    double high = root.getViewportBounds().getHeight();
    material.rows((int) Math.max(FEWEST_DRILLS, Math.floor((high / em - OTHER_EMS) / ROW_EMS)));
    plan.root().pseudoClassStateChanged(TIGHT, root.getWidth() / em < TIGHT_EMS);
    book.least(high - 2 * MARGIN_EMS * em);
    double bar = root.getWidth() - root.getViewportBounds().getWidth();
    double side = content.getInsets().getLeft();
    VBox.setMargin(book, new Insets(0, Math.max(0, side - bar), 0, 0));
  }

  /**
   * Where the drills do not stand beside the sheet, what was chosen comes into view, and the cursor
   * goes to what is done with it.
   */
  private void turnToWhatWasChosen() {
    root.applyCss();
    root.layout();
    Node chosenIn = material.chosenIn();
    Bounds drills = chosenIn.localToScene(chosenIn.getLayoutBounds());
    Bounds seen = root.localToScene(root.getLayoutBounds());
    if (root.getVvalue() > 0 || drills.getMinY() > seen.getMaxY()) {
      root.setVvalue(0);
      now.deal().requestFocus();
    }
  }

  /** What hangs the wall, or puts it away. */
  public void onWall(Runnable turns) {
    now.onWall(turns);
  }

  /** Where the take stands. */
  public void look(TakeMoment moment) {
    now.look(moment);
    boolean playing = moment.part() == TakeMoment.Part.PLAYING && linesArePlayed();
    plan.look(playing ? moment.stage() : -1);
  }

  /** False where somebody else leads what is not chosen here. */
  private boolean linesArePlayed() {
    Drill shown = desk.lectern().inPlay();
    Dealt dealt = room.getValue().dealt();
    return shown != null && dealt != null && shown.stages().equals(dealt.stages());
  }

  private String pageKey(RoomState state) {
    if (!desk.lectern().pageIsDealt()) {
      return "lectern.page.will";
    }
    return state.phase() == Phase.REVIEW ? "lectern.page.was" : "lectern.page";
  }

  private void show() {
    RoomState state = room.getValue();
    if (!state.leader()) {
      return;
    }
    now.show();
    roster.show(state, desk.lectern().chosen());
    material.show();
    plan.show();
    List<String> names = desk.roster().playing().stream().map(Person::name).toList();
    boolean nothing = desk.lectern().chosen() == null;
    Keyed.shown(waits, nothing);
    Keyed.shown(wayIn, nothing && roster.open());
    roster.wayIn(nothing && roster.open() ? wayIn : null);
    Keyed.shown(plan.root(), desk.lectern().chosen() != null);
    Keyed.shown(pageHead, desk.lectern().page() != null);
    Keyed.shown(page.root(), desk.lectern().page() != null);
    pageHead.setText(words.say(pageKey(state)));
    page.show(desk.lectern().page(), names);
  }
}

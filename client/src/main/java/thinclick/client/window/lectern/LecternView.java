package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Person;

/** The prompt book: what to do now, roster, material, click plan and page. */
public final class LecternView {
  private final LecternDesk desk;
  private final NowView now;
  private final RosterView roster;
  private final MaterialView material;
  private final PlanView plan;
  private final PageView page;
  private final Label pageHead;
  private final ObservableValue<RoomState> room;
  private final ScrollPane root;

  public LecternView(LecternDesk desk, Words words, ObservableValue<RoomState> room) {
    this.desk = desk;
    this.room = room;
    now = new NowView(words, desk);
    roster = new RosterView(desk.roster(), words);
    material = new MaterialView(desk, words);
    plan = new PlanView(desk, words);
    page = new PageView(words);
    pageHead = styled(new Label(words.say("lectern.page")), "heading");
    VBox sheet =
        styled(new VBox(12, plan.title(), now.root(), plan.root(), pageHead, page.root()), "sheet");
    sheet.getStyleClass().add("lectern-right");
    VBox left = styled(new VBox(22, material.lessons(), roster.root()), "lectern-left");
    VBox middle = styled(new VBox(material.root()), "lectern-middle");
    VBox content = styled(new VBox(new PromptBook(left, middle, sheet, 30)), "page");
    root = new ScrollPane(content);
    root.setFitToWidth(true);
    root.setFocusTraversable(false);
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

  /** Changes colours and the size of what is drawn. */
  public void dress(Palette palette, double textSize, double usualSize) {
    plan.dress(palette, textSize);
    page.dress(palette, textSize / usualSize);
  }

  /** What hangs the wall, or puts it away. */
  public void onWall(Runnable turns) {
    now.onWall(turns);
  }

  /** Where the take stands. */
  public void look(TakeMoment moment) {
    now.look(moment);
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
    Keyed.shown(plan.root(), desk.lectern().chosen() != null);
    Keyed.shown(pageHead, desk.lectern().page() != null);
    Keyed.shown(page.root(), desk.lectern().page() != null);
    page.show(desk.lectern().page(), names);
  }
}

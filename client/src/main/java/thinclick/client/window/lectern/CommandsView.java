package thinclick.client.window.lectern;

import java.util.List;
import java.util.Set;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.server.lesson.LessonRun;

/**
 * What the leader can do: a row for the take, one for its click, one for the deal. No button gives
 * way to another's words, so that each is found where it was; the one that comes next is black.
 */
final class CommandsView {
  private static final PseudoClass HELD = PseudoClass.getPseudoClass("held");

  private final LecternDesk desk;
  private final Button goOn;
  private final Button stop;
  private final Button pause;
  private final Button rescue;
  private final Button more;
  private final Button fewer;
  private final Button deal;
  private final Button undo;
  private final Button repeat;
  private final Button next;
  private final Node first;
  private final VBox others;
  private TakeMoment moment = TakeMoment.NONE;

  CommandsView(Words words, LecternDesk desk) {
    this.desk = desk;
    LessonModel lesson = desk.lesson();
    goOn =
        Keyed.button("go-on", words.say("lectern.countIn"), words.keys("Ctrl+Enter"), lesson::goOn);
    goOn.getStyleClass().add("lectern-go-on");
    stop =
        Keyed.button(
            "stop", words.say("lectern.stop"), words.say("settings.key.stop"), desk.take()::stop);
    pause = Keyed.button("pause", words.say("lectern.pause"), words.keys("Ctrl+P"), lesson::pause);
    pause.getStyleClass().add("lectern-pause");
    rescue =
        Keyed.button(
            "rescue",
            words.say("lectern.rescue"),
            words.keys("Ctrl+R"),
            () -> desk.steering().rescue(moment));
    more =
        Keyed.button("more", words.say("lectern.more"), words.keys("Ctrl+M"), lesson::moreClicks);
    fewer =
        Keyed.button(
            "fewer", words.say("lectern.fewer"), words.keys("Ctrl+L"), lesson::fewerClicks);
    deal =
        Keyed.button("deal", words.say("lectern.deal"), words.keys("Ctrl+D"), desk.lectern()::deal);
    undo =
        Keyed.button("undo", words.say("lectern.undo"), words.keys("Ctrl+Z"), desk.lectern()::undo);
    repeat =
        Keyed.button("repeat", words.say("lectern.repeat"), words.keys("Ctrl+B"), lesson::repeat);
    next = Keyed.button("next", words.say("lectern.next"), words.keys("Ctrl+N"), lesson::next);
    CheckBox asHeld = new CheckBox(words.say("lectern.asHeld"));
    Prose.in(asHeld);
    asHeld.setId("as-held");
    asHeld.selectedProperty().bindBidirectional(desk.take().asHeldProperty());
    List<CommandGrid> grids =
        CommandGrid.alike(
            10,
            8,
            Set.of(goOn, rescue),
            List.of(
                List.of(goOn, pause, stop),
                List.of(more, fewer, rescue, deal, undo, repeat, next)));
    first = grids.get(0);
    others = new VBox(8, grids.get(1), asHeld);
  }

  /** What begins and ends a take. */
  Node first() {
    return first;
  }

  /** What changes the click and the deal. */
  Node others() {
    return others;
  }

  Button deal() {
    return deal;
  }

  void show() {
    LecternModel lectern = desk.lectern();
    LessonModel lesson = desk.lesson();
    LessonRun run = lesson.run();
    LessonModel.Pause does = lesson.pauseDoes();
    Keyed.says(goOn, desk.prompt().nextStep());
    goOn.setDisable(!lesson.canGoOn());
    stop.setDisable(!desk.take().canStop());
    Keyed.says(pause, desk.prompt().pause());
    pause.setDisable(does == LessonModel.Pause.NOTHING);
    pause.pseudoClassStateChanged(
        HELD, does == LessonModel.Pause.GO_ON || does == LessonModel.Pause.END_BREAK);
    boolean canChange = lectern.canChoose() && lectern.chosen() != null;
    more.setDisable(!canChange);
    fewer.setDisable(!canChange);
    deal.setDisable(!lectern.canDeal());
    undo.setDisable(!lectern.canUndo());
    Keyed.shown(repeat, run != null);
    Keyed.shown(next, run != null);
    repeat.setDisable(!lesson.canRepeat());
    next.setDisable(!lectern.canChoose() || run == null || run.last());
    Prompt.Command due = desk.prompt().due();
    Keyed.primary(goOn, due == Prompt.Command.GO_ON);
    Keyed.primary(deal, due == Prompt.Command.DEAL);
    Keyed.primary(stop, due == Prompt.Command.STOP);
  }

  /** Where the take stands. */
  void look(TakeMoment now) {
    moment = now;
    rescue.setDisable(!desk.steering().canRescue(now));
  }
}

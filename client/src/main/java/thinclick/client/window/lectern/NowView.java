package thinclick.client.window.lectern;

import static thinclick.client.window.lectern.Keyed.styled;

import java.util.List;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.server.lesson.LessonRun;

/** What is to be done now: the lesson's words, the proposal after a take, the commands. */
final class NowView {
  private final Words words;
  private final LecternModel lectern;
  private final LessonModel lesson;
  private final Steering steering;
  private final Proposals proposals;

  private final Label place = styled(new Label(), "soft");
  private final Label script = styled(new Label(), "script");
  private final VBox steps = new VBox(2);
  private final Label left = styled(new Label(), "soft");
  private final Label care = new Label();
  private final VBox lessonBox = styled(new VBox(6), "double-ruled");
  private final Label proposal = new Label();
  private final Button takeIt;
  private final Button best;
  private final Label bestSays = new Label();
  private final Label held = new Label();
  private final FitView fit;
  private final Button goOn;
  private final Button deal;
  private final Button undo;
  private final Button stop;
  private final Button pause;
  private final Button rescue;
  private final Button repeat;
  private final Button next;
  private final Button more;
  private final Button fewer;
  private final VBox proposalLine;
  private final VBox root = new VBox(10);
  private List<String> shownLines = List.of();
  private long lookedSecond = Long.MIN_VALUE;
  private Runnable turnsWall = () -> {};
  private TakeMoment moment = TakeMoment.NONE;

  NowView(
      Words words,
      LecternModel lectern,
      LessonModel lesson,
      Steering steering,
      Proposals proposals,
      ClassDesk classes) {
    fit = new FitView(words, lectern, classes);
    this.words = words;
    this.lectern = lectern;
    this.lesson = lesson;
    this.steering = steering;
    this.proposals = proposals;
    goOn =
        styled(
            Keyed.button(
                "go-on", words.say("lectern.countIn"), words.keys("Ctrl+Enter"), lesson::goOn),
            "primary");
    deal = Keyed.button("deal", words.say("lectern.deal"), words.keys("Ctrl+D"), lectern::deal);
    undo = Keyed.button("undo", words.say("lectern.undo"), words.keys("Ctrl+Z"), lectern::undo);
    stop = Keyed.button("stop", words.say("lectern.stop"), words.keys("Ctrl+."), lectern::stop);
    pause = Keyed.button("pause", words.say("lectern.pause"), words.keys("Ctrl+P"), lesson::pause);
    rescue =
        Keyed.button(
            "rescue",
            words.say("lectern.rescue"),
            words.keys("Ctrl+R"),
            () -> steering.rescue(moment));
    repeat =
        Keyed.button("repeat", words.say("lectern.repeat"), words.keys("Ctrl+B"), lesson::repeat);
    next = Keyed.button("next", words.say("lectern.next"), words.keys("Ctrl+N"), lesson::next);
    more =
        Keyed.button("more", words.say("lectern.more"), words.keys("Ctrl+M"), lesson::moreClicks);
    fewer =
        Keyed.button(
            "fewer", words.say("lectern.fewer"), words.keys("Ctrl+L"), lesson::fewerClicks);
    takeIt =
        Keyed.button(
            "take-it", words.say("lectern.next.take"), words.keys("Ctrl+G"), proposals::take);
    best =
        styled(
            Keyed.button(
                "fewest", words.say("lectern.fewest"), words.keys("Ctrl+F"), proposals::lookUp),
            "quiet");
    proposalLine = new VBox(6, proposal, takeIt);
    createView();
  }

  VBox root() {
    return root;
  }

  private void createView() {
    for (Label each : new Label[] {place, script, left, care, proposal, held, bestSays}) {
      each.setWrapText(true);
    }
    place.setId("lesson-place");
    script.setId("script");
    care.setId("care");
    proposal.setId("proposal");
    held.setId("held");
    bestSays.setId("fewest-says");
    held.textProperty().bind(steering.saysProperty());
    bestSays.textProperty().bind(proposals.saysProperty());
    for (Label each : new Label[] {held, bestSays, care}) {
      each.visibleProperty().bind(each.textProperty().isNotEmpty());
      each.managedProperty().bind(each.visibleProperty());
    }
    Button leave =
        styled(
            Keyed.button("leave-lesson", words.say("lectern.lesson.leave"), "", lesson::leave),
            "quiet");
    FlowPane ways = new FlowPane(10, 8, repeat, next, leave);
    steps.setId("script-lines");
    lessonBox.setId("lesson");
    lessonBox.getChildren().setAll(place, script, steps, left, ways);
    CheckBox asHeld = new CheckBox(words.say("lectern.asHeld"));
    asHeld.setWrapText(true);
    asHeld.setId("as-held");
    asHeld.setWrapText(true);
    asHeld.selectedProperty().bindBidirectional(lectern.asHeldProperty());
    FlowPane commands = new FlowPane(10, 8, goOn, deal, undo, stop, pause, rescue, more, fewer);
    Button wall =
        styled(
            Keyed.button(
                "wall", words.say("lectern.wall"), words.keys("Ctrl+4"), () -> turnsWall.run()),
            "quiet");
    FlowPane click = new FlowPane(18, 8, best, wall);
    root.getChildren()
        .setAll(lessonBox, care, commands, asHeld, fit.root(), click, held, proposalLine, bestSays);
  }

  void onWall(Runnable turns) {
    turnsWall = turns;
  }

  void show() {
    boolean running = lesson.run() != null;
    Keyed.shown(lessonBox, running);
    place.setText(lesson.place());
    script.setText(lesson.script());
    scriptLines();
    goOn.setText(lesson.nextStep());
    goOn.setDisable(!lesson.canGoOn());
    deal.setDisable(!lectern.canDeal());
    undo.setDisable(!lectern.canUndo());
    stop.setDisable(!lectern.canStop());
    pause.setDisable(!lesson.canPause());
    boolean canChange = lectern.canChoose() && lectern.chosen() != null;
    repeat.setDisable(!lectern.canChoose());
    LessonRun run = lesson.run();
    next.setDisable(!lectern.canChoose() || run == null || run.last());
    more.setDisable(!canChange);
    fewer.setDisable(!canChange);
    Proposals.@Nullable Line line = proposals.line();
    Keyed.shown(proposalLine, line != null);
    if (line != null) {
      proposal.setText(line.says());
      Keyed.shown(takeIt, line.changes());
    }
    best.setDisable(lectern.chosen() == null);
    fit.show();
    lookedSecond = Long.MIN_VALUE;
    look(moment);
  }

  private void scriptLines() {
    List<String> lines = lesson.scriptLines();
    if (!lines.equals(shownLines)) {
      shownLines = lines;
      steps.getChildren().clear();
      for (String line : lines) {
        Label label = new Label(line);
        label.setWrapText(true);
        steps.getChildren().add(label);
      }
    }
  }

  /** Where the take stands, and what the lesson's clock shows. */
  void look(TakeMoment now) {
    moment = now;
    rescue.setDisable(!steering.canRescue(now));
    long second = System.nanoTime() / 1_000_000_000L;
    if (second != lookedSecond) {
      lookedSecond = second;
      set(left, lesson.left());
      set(care, lesson.care());
    }
  }

  private static void set(Label label, String text) {
    if (!Objects.equals(label.getText(), text)) {
      label.setText(text);
    }
  }

  Node begin() {
    return goOn;
  }
}

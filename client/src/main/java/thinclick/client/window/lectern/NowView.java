package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;

/** What is to be done now: the commands, the lesson's words, the proposal after a take. */
final class NowView {
  private static final long NANOS_A_SECOND = 1_000_000_000L;

  private final LecternDesk desk;
  private final CommandsView commands;
  private final ScriptView script;
  private final FitView fit;
  private final Label care = new Label();
  private final Label proposal = new Label();
  private final Button takeIt;
  private final VBox proposalLine;
  private final Button best;
  private final Label bestSays = new Label();
  private final Label held = new Label();
  private final Label tooLate = new Label();
  private final FlowPane looks;
  private final VBox root = new VBox(8);
  private long lookedSecond = Long.MIN_VALUE;
  private Runnable turnsWall = () -> {};
  private TakeMoment moment = TakeMoment.NONE;

  NowView(Words words, LecternDesk desk) {
    this.desk = desk;
    commands = new CommandsView(words, desk);
    script = new ScriptView(words, desk.prompt(), desk.lesson());
    fit = new FitView(words, desk.lectern(), desk.classes());
    takeIt =
        Keyed.button(
            "take-it",
            words.say("lectern.next.take"),
            words.keys("Ctrl+G"),
            desk.proposals()::take);
    proposalLine = new VBox(6, proposal, takeIt);
    best =
        styled(
            Keyed.button(
                "fewest",
                words.say("lectern.fewest"),
                words.keys("Ctrl+F"),
                desk.proposals()::lookUp),
            "quiet");
    Button wall =
        styled(
            Keyed.button(
                "wall", words.say("lectern.wall"), words.keys("Ctrl+4"), () -> turnsWall.run()),
            "quiet");
    looks = new FlowPane(18, 8, best, wall);
    createView();
    oneColumn(false);
  }

  VBox root() {
    return root;
  }

  private void createView() {
    care.setId("care");
    proposal.setId("proposal");
    Prose.in(proposal);
    held.setId("held");
    held.textProperty().bind(desk.steering().saysProperty());
    tooLate.setId("rescue-not");
    tooLate.getStyleClass().add("soft");
    bestSays.setId("fewest-says");
    bestSays.textProperty().bind(desk.proposals().saysProperty());
    for (Label each : new Label[] {held, tooLate, bestSays, care}) {
      Prose.in(each);
      each.visibleProperty().bind(each.textProperty().isNotEmpty());
      each.managedProperty().bind(each.visibleProperty());
    }
  }

  /**
   * The commands stand above all that comes and goes, so that each is found where it was. Where
   * large text leaves one column, that would fill the window before a word of the script: there
   * only what begins and ends a take stands above it.
   */
  void oneColumn(boolean one) {
    List<Node> all = new ArrayList<>(List.of(commands.first()));
    List<Node> said = List.of(script.root(), care, held, tooLate, proposalLine);
    if (one) {
      all.addAll(said);
    }
    all.add(commands.others());
    if (!one) {
      all.addAll(said);
    }
    all.addAll(List.of(fit.root(), looks, bestSays));
    root.getChildren().setAll(all);
  }

  /** Where one goes on once something is chosen. */
  Node deal() {
    return commands.deal();
  }

  void onWall(Runnable turns) {
    turnsWall = turns;
  }

  void show() {
    commands.show();
    Keyed.shown(script.root(), desk.lesson().run() != null);
    Proposals.@Nullable Line line = desk.proposals().line();
    Keyed.shown(proposalLine, line != null);
    if (line != null) {
      proposal.setText(line.says());
      Keyed.shown(takeIt, line.changes());
    }
    best.setDisable(desk.lectern().chosen() == null);
    fit.show();
    lookedSecond = Long.MIN_VALUE;
    look(moment);
  }

  /** Where the take stands, and what the lesson's clock shows. */
  void look(TakeMoment now) {
    boolean moved = now.part() != moment.part();
    moment = now;
    commands.look(now);
    say(tooLate, desk.steering().tooLateToRescue(now));
    long second = System.nanoTime() / NANOS_A_SECOND;
    if (moved || second != lookedSecond) {
      lookedSecond = second;
      script.look(now.part());
      script.tick();
      say(care, desk.prompt().care());
    }
  }

  /** Set anew where it has changed alone: it is looked at many times a second. */
  private static void say(Label label, String says) {
    if (!says.equals(label.getText())) {
      label.setText(says);
    }
  }
}

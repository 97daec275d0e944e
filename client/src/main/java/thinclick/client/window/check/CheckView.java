package thinclick.client.window.check;

import static thinclick.client.window.check.Parts.givingWay;
import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.look.InView;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.look.WholeLines;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing.Mode;

/** The sound check as four numbered sentences: what it is about, beside it what it finds. */
public final class CheckView {
  private final CheckModel model;
  private final Words words;
  private final SoundingPart sounding;
  private final TappingPart tapping;
  private final FoundPart found;
  private final Button begin = new Button();
  private final Button stop = new Button();
  private final Button back = styled(new Button(), "quiet");
  private final VBox inputs = styled(new VBox(), "block");
  private final VBox wholeRoom = styled(new VBox(), "block");

  /** What begins it, and above it the care to take: nobody sees the one without the other. */
  private final VBox beginning = styled(new VBox(), "block");

  /** What came of a check, and above it what begins the next: they come into view together. */
  private final VBox outcome = styled(new VBox(), "block");

  /** What is left alone while a check runs. */
  private final List<Node> resting;

  private final PagePane root;

  /**
   * @param chairSays what is known of this chair, a sentence
   * @param hearingSays what is heard of the others, a sentence
   * @param hearing how they are heard now, chosen or not
   */
  public CheckView(
      CheckModel model,
      CheckSound sound,
      ReadOnlyStringProperty chairSays,
      ReadOnlyStringProperty hearingSays,
      ReadOnlyObjectProperty<Mode> hearing,
      Words words) {
    this.model = model;
    this.words = words;
    sounding = new SoundingPart(sound, words);
    tapping = new TappingPart(model, words);
    found = new FoundPart(model, chairSays, words);
    VBox second = Parts.numbered(words, 2, words.say("check.input"), inputs);
    VBox others = new HearingPart(sound, hearingSays, hearing, words).root();
    resting = List.of(sounding.root(), second, others, tapping.microphone(), back, wholeRoom);
    VBox sheet = sheet(second, others);
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    root = new PagePane(page);
    WholeLines.keep(root, page, sheet);
    root.viewportBoundsProperty().addListener((any, old, now) -> found.within(now.getHeight()));
    root.setFocusTraversable(false);
    model.verdictProperty().addListener((any, old, now) -> show(now));
    model.phaseProperty().addListener((any, old, now) -> follow(old, now));
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the cursor where one begins, in view; while a check runs, on what stops it. */
  public void begin() {
    Node first = stop.isVisible() ? stop : begin.isDisabled() ? sounding.output() : begin;
    InView.keep(first == begin ? beginning : first);
    first.requestFocus();
  }

  /** What leads back where one came from. */
  public void onBack(Runnable does) {
    back.setOnAction(done -> does.run());
  }

  /** What whoever leads can do for the whole room. */
  public void forWhoLeads(String says, String button, Runnable does) {
    Button deal = new Button(button);
    deal.setId("check-room");
    deal.setOnAction(done -> does.run());
    wholeRoom.getChildren().setAll(Prose.of(says), deal);
  }

  /** Whether that can be done now. */
  public void leads(boolean now) {
    wholeRoom.setVisible(now);
  }

  /** Where further controls about the input have their place. */
  public VBox inputs() {
    return inputs;
  }

  /**
   * While it listens nothing has the focus, so that a key that is no letter breaks nothing off, and
   * Tab leads to what stops it and nowhere else.
   */
  private void follow(Phase old, Phase now) {
    boolean idle = now == Phase.IDLE;
    boolean here = begin.isFocused() || stop.isFocused() || root.isFocused();
    begin.setVisible(idle);
    stop.setVisible(now == Phase.CLICKING || now == Phase.SILENT);
    resting.forEach(node -> node.setDisable(!idle));
    if (old == Phase.IDLE && here) {
      root.requestFocus();
      InView.keep(beginning); // with the care to take
    } else if (idle && here) {
      begin.requestFocus();
    }
  }

  private void show(@Nullable Verdict verdict) {
    found.show(verdict);
    if (verdict != null) {
      InView.keep(outcome);
    }
  }

  private VBox sheet(VBox second, VBox others) {
    Label title = styled(new Label(words.say("view.check")), "title");
    Label what = Prose.of(words.say("check.what"));
    VBox before = styled(styled(new VBox(sounding.root(), second), "column"), "block");
    outcome.getChildren().addAll(commands(), found.root());
    VBox check = styled(styled(new VBox(tapping.root(), outcome, others), "column"), "block");
    TwoColumns columns = new TwoColumns(before, check, 0.5, 44);
    VBox care = styled(new VBox(styled(Prose.of(words.say("care.sound")), "soft")), "ruled");
    VBox sheet = styled(new VBox(title, what, columns, care), "sheet");
    sheet.getStyleClass().add("check-sheet");
    return sheet;
  }

  /** How it is begun and stopped, by whoever leads for the whole room as well. */
  private VBox commands() {
    begin.setId("check-begin");
    begin
        .textProperty()
        .bind(
            Bindings.when(model.verdictProperty().isNull())
                .then(words.say("check.begin"))
                .otherwise(words.say("check.again")));
    begin.setOnAction(done -> model.begin(System.nanoTime()));
    begin.disableProperty().bind(model.audibleProperty().not());
    stop.setId("check-stop");
    stop.setText(words.say("check.stop"));
    stop.setOnAction(done -> model.breakOff());
    stop.setVisible(false);
    back.setId("check-back");
    back.setText(words.say("check.back"));
    wholeRoom.setVisible(false);
    Label care = givingWay(Prose.of(words.say("check.care")));
    care.setId("check-care");
    // Whoever has heard the click has read it, and what came of the check needs the room.
    care.visibleProperty().bind(model.verdictProperty().isNull());
    FlowPane commands = new FlowPane(givingWay(begin), givingWay(stop), back);
    beginning.getChildren().addAll(care, styled(commands, "commands"));
    VBox all = new VBox(beginning, givingWay(wholeRoom));
    return styled(styled(all, "block"), "above-rule");
  }
}

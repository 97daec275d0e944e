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
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Verdict;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.look.FootedPage;
import thinclick.client.window.look.Ground;
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

  /** Where what begins it stands as long as it is in view there with the head of the page. */
  private final VBox place = new VBox();

  /** What came of a check, and above it what begins the next: they come into view together. */
  private final VBox outcome = styled(new VBox(), "block");

  private final Label head = new Label();

  /** What is left alone while a check runs. */
  private final List<Node> resting;

  private final PagePane page;
  private final FootedPage root;

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
    head.setText(words.say("view.check"));
    styled(head, "title");
    wholeRoom.setVisible(false);
    sounding = new SoundingPart(sound, words);
    tapping = new TappingPart(model, words);
    found = new FoundPart(model, chairSays, words);
    VBox second = Parts.numbered(words, 2, words.say("check.input"), inputs);
    VBox others = new HearingPart(sound, hearingSays, hearing, words).root();
    resting = List.of(sounding.root(), second, others, tapping.microphone(), back, wholeRoom);
    VBox sheet = sheet(second, others);
    Ground ground = new Ground(sheet);
    page = new PagePane(ground);
    WholeLines.keep(page, ground, sheet);
    page.viewportBoundsProperty().addListener((any, old, now) -> found.within(now.getHeight()));
    page.setFocusTraversable(false);
    root = new FootedPage(page, ground, place, beginning());
    model.verdictProperty().addListener((any, old, now) -> show(now));
    model.phaseProperty().addListener((any, old, now) -> follow(old, now));
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Opened at its head, with the cursor where one begins; while a check runs, on what stops it. */
  public void begin() {
    InView.keep(stop.isVisible() ? outcome : head);
    (stop.isVisible() ? stop : begin.isDisabled() ? sounding.output() : begin).requestFocus();
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
    boolean here = begin.isFocused() || stop.isFocused() || page.isFocused();
    begin.setVisible(idle);
    stop.setVisible(now == Phase.CLICKING || now == Phase.SILENT);
    resting.forEach(node -> node.setDisable(!idle));
    if (old == Phase.IDLE && here) {
      page.requestFocus();
      InView.keep(outcome); // where it will stand, and above it the clicks that are counted
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
    Label what = Prose.of(words.say("check.what"));
    VBox before = styled(styled(new VBox(sounding.root(), second), "column"), "block");
    VBox commands = new VBox(place, givingWay(wholeRoom));
    commands
        .managedProperty()
        .bind(Bindings.isNotEmpty(place.getChildren()).or(wholeRoom.visibleProperty()));
    styled(styled(commands, "block"), "above-rule");
    outcome.getChildren().addAll(commands, found.root());
    VBox check = styled(styled(new VBox(tapping.root(), outcome, others), "column"), "block");
    TwoColumns columns = new TwoColumns(before, check, 0.5, 44);
    VBox care = styled(new VBox(styled(Prose.of(words.say("care.sound")), "soft")), "ruled");
    VBox sheet = styled(new VBox(head, what, columns, care), "sheet");
    sheet.getStyleClass().add("check-sheet");
    return sheet;
  }

  /** How it is begun and stopped, with the care to take: nobody sees the one without the other. */
  private BorderPane beginning() {
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
    HBox commands = styled(new HBox(givingWay(begin), givingWay(stop), back), "check-commands");
    commands.setMaxHeight(Region.USE_PREF_SIZE);
    Label care = care();
    BorderPane all = new BorderPane();
    all.setLeft(commands);
    all.setCenter(care);
    BorderPane.setAlignment(commands, Pos.CENTER_LEFT);
    BorderPane.setAlignment(care, Pos.CENTER_LEFT);
    return all;
  }

  /**
   * The care to take; where nothing can sound, why nothing can be begun, unless the sentence that
   * says so stands above on the page.
   */
  private Label care() {
    Label care = givingWay(styled(Prose.of(""), "check-care"));
    care.setId("check-care");
    care.textProperty()
        .bind(
            Bindings.when(model.audibleProperty())
                .then(words.say("check.care"))
                .otherwise(words.say("check.silence.begin")));
    care.visibleProperty().bind(model.audibleProperty().or(Bindings.isEmpty(place.getChildren())));
    return care;
  }
}

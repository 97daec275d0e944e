package thinclick.client.window.practice;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import java.util.stream.IntStream;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import thinclick.client.standin.Manner;
import thinclick.client.window.look.Choices;
import thinclick.client.window.look.FootedPage;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.look.WholeLines;
import thinclick.client.window.session.Company;
import thinclick.client.window.words.Words;

/** The page before one practises alone: drills to the left, tempo and company to the right. */
public final class PracticeView {
  /** Tempo, chair and company; a line for each stand-in follows. */
  private static final int OWN_LINES = 3;

  private final PracticeModel model;
  private final Words words;
  private final DrillPart drills;
  private final Label chosen = styled(Prose.of(""), "heading");
  private final ChoiceBox<Integer> count = new ChoiceBox<>();
  private final ChoiceBox<String> place = new ChoiceBox<>();
  private final CheckBox horn = Prose.in(new CheckBox());
  private final Form form = new Form();
  private final Button back = new Button();
  private final FootedPage root;
  private boolean showing;

  public PracticeView(PracticeModel model, Words words) {
    this.model = model;
    this.words = words;
    drills = new DrillPart(model, words);
    horn.setId("practice-horn");
    horn.selectedProperty().bindBidirectional(model.playedFirstProperty());
    fillForm();
    VBox how = new VBox(chosen, form, horn);
    how.getStyleClass().addAll("ruled", "stacked", "column");
    TwoColumns columns = new TwoColumns(drills.root(), how, 0.5, 44);
    VBox sheet = sheet(columns, words);
    VBox content = styled(styled(new VBox(sheet), "page"), "shallow");
    content.setAlignment(Pos.TOP_CENTER);
    PagePane page = new PagePane(content);
    page.setFitToHeight(true);
    page.setFocusTraversable(false);
    WholeLines.keep(page, content, sheet);
    Runnable fit =
        () -> drills.within(page.getViewportBounds().getHeight() - above(content, drills.root()));
    page.viewportBoundsProperty().addListener(any -> fit.run());
    columns.layoutYProperty().addListener(any -> fit.run());
    root = new FootedPage(page, content, how, commands());
    model.drillProperty().addListener(any -> show());
    model.countProperty().addListener(any -> show());
    model.ownPlaceProperty().addListener(any -> show());
    show();
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the cursor where one begins. */
  public void begin() {
    show(); // a name may have been written since
    drills.begin();
  }

  /** What goes back to the door. */
  public void onBack(Runnable does) {
    back.setOnAction(done -> does.run());
  }

  /** How far a part begins below the upper edge of the page. */
  private static double above(Region page, Region part) {
    return part.localToScene(0, 0).getY() - page.localToScene(0, 0).getY();
  }

  /** What is chosen stands first, so that the page is opened at its head in a low window too. */
  private static VBox sheet(TwoColumns columns, Words words) {
    VBox.setVgrow(columns, Priority.ALWAYS);
    Label title = styled(Prose.of(words.say("view.practice")), "title");
    Label what = styled(Prose.of(words.say("practice.what")), "soft");
    what.setMinHeight(Region.USE_PREF_SIZE); // the list gives way, in a low window
    VBox sheet = styled(styled(new VBox(title, columns, what), "sheet"), "practice-sheet");
    VBox.setVgrow(sheet, Priority.ALWAYS);
    return sheet;
  }

  private void fillForm() {
    form.line(words.say("lectern.tempo"), tempo(), tempoSays());
    count.setId("practice-count");
    count.setItems(
        FXCollections.observableArrayList(IntStream.rangeClosed(0, Company.MOST).boxed().toList()));
    count.setConverter(Choices.said(many -> Words.begun(words.say("practice.count", many))));
    count.setAccessibleText(words.say("practice.company"));
    count.setOnAction(done -> ifChosen(() -> model.countProperty().set(count.getValue())));
    place.setId("practice-place");
    place.setAccessibleText(words.say("practice.own"));
    place.setOnAction(
        done ->
            ifChosen(
                () ->
                    model
                        .ownPlaceProperty()
                        .set(Math.max(0, place.getSelectionModel().getSelectedIndex()))));
    form.line(words.say("practice.own"), place);
    form.line(words.say("practice.company"), count);
  }

  private FlowPane tempo() {
    TextField tempo = styled(new TextField(), "few");
    tempo.setId("practice-tempo");
    tempo.setAccessibleText(words.say("lectern.tempo"));
    tempo.textProperty().bindBidirectional(model.tempoProperty());
    tempo.setOnAction(done -> model.begin());
    return styled(new FlowPane(tempo, new Label(words.say("lectern.tempo.unit"))), "with-unit");
  }

  private Label tempoSays() {
    Label says = styled(Prose.of(""), "wrong");
    says.setId("practice-tempo-says");
    says.textProperty().bind(model.tempoSaysProperty());
    says.visibleProperty().bind(says.textProperty().isNotEmpty());
    says.managedProperty().bind(says.visibleProperty());
    return says;
  }

  private FlowPane commands() {
    Button begin = styled(new Button(words.say("practice.begin")), "primary");
    begin.setId("practice-begin");
    begin.setOnAction(done -> model.begin());
    back.setId("practice-back");
    back.setText(words.say("practice.back"));
    back.getStyleClass().add("quiet");
    return styled(new FlowPane(begin, back), "commands");
  }

  /** What this view itself sets is no choice of the player's. */
  private void ifChosen(Runnable does) {
    if (!showing) {
      does.run();
    }
  }

  private void show() {
    showing = true;
    chosen.setText(model.drillProperty().get().title());
    horn.setText(model.playedFirst());
    count.setValue(model.countProperty().get());
    place.getItems().setAll(model.places().stream().map(Words::begun).toList());
    place.getSelectionModel().select(model.ownPlaceProperty().get());
    List<String> names = model.standIns();
    form.keep(OWN_LINES);
    for (int i = 0; i < names.size(); i++) {
      form.line(names.get(i), standIn(i, names.get(i)));
    }
    showing = false;
  }

  private Region standIn(int at, String who) {
    ChoiceBox<Manner> manner = new ChoiceBox<>();
    manner.setId("practice-manner-" + (at + 1));
    manner.setItems(FXCollections.observableArrayList(Manner.values()));
    manner.setConverter(Choices.said(one -> Words.begun(model.say(one))));
    manner.setValue(model.manners().get(at));
    manner.setAccessibleText(who);
    manner.setOnAction(done -> model.manners().set(at, manner.getValue()));
    return manner;
  }
}

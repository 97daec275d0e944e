package thinclick.client.window.practice;

import java.util.List;
import java.util.stream.IntStream;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.standin.Manner;
import thinclick.client.window.look.Choices;
import thinclick.client.window.look.Example;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.session.Company;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;

/** The page before one practises alone: drills to the left, tempo and company to the right. */
public final class PracticeView {
  /** Tempo, chair and company; a line for each stand-in follows. */
  private static final int OWN_LINES = 3;

  private final PracticeModel model;
  private final Words words;
  private final ListView<Drill> drills = new FullRows<>();
  private final Label chosen = styled(Prose.of(""), "heading");
  private final ChoiceBox<Integer> count = new ChoiceBox<>();
  private final ChoiceBox<String> place = new ChoiceBox<>();
  private final CheckBox horn = Prose.in(new CheckBox());
  private final Form form = new Form();
  private final Button begin = new Button();
  private final Button back = new Button();
  private final PagePane root;
  private boolean showing;

  public PracticeView(PracticeModel model, Words words) {
    this.model = model;
    this.words = words;
    this.root = new PagePane(createView());
    root.setFitToHeight(true);
    root.setFocusTraversable(false);
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
    if (drills.getSelectionModel().isEmpty()) {
      drills.getSelectionModel().selectFirst();
    }
    show(); // a name may have been written since
    drills.requestFocus();
  }

  /** What goes back to the door. */
  public void onBack(Runnable does) {
    back.setOnAction(done -> does.run());
  }

  private Node createView() {
    TextField looking = styled(new TextField(), "above-list");
    looking.setId("practice-looking");
    Example.in(looking, words.say("lectern.looking"));
    looking.setAccessibleText(words.say("lectern.looking"));
    looking.textProperty().bindBidirectional(model.lookingProperty());
    looking.textProperty().addListener(any -> selectWhatIsLeft());
    looking.setOnAction(done -> drills.requestFocus());
    drills.setId("practice-drills");
    drills.itemsProperty().bind(model.drillsProperty());
    drills.setPrefHeight(330);
    drills.setAccessibleText(words.say("lectern.material"));
    drills.setCellFactory(list -> new DrillCell());
    drills
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (any, old, now) -> {
              if (now != null && !now.equals(model.drillProperty().get())) {
                model.choose(now);
              }
            });
    drills.addEventFilter(
        KeyEvent.KEY_PRESSED,
        key -> {
          if (key.getCode() == KeyCode.ENTER && !key.isControlDown()) {
            model.begin();
          }
        });
    VBox left = styled(styled(styled(new VBox(looking, drills), "ruled"), "block"), "column");
    VBox.setVgrow(drills, Priority.ALWAYS);

    TextField tempo = styled(new TextField(), "few");
    tempo.setId("practice-tempo");
    tempo.setAccessibleText(words.say("lectern.tempo"));
    tempo.textProperty().bindBidirectional(model.tempoProperty());
    tempo.setOnAction(done -> model.begin());
    Label tempoSays = styled(Prose.of(""), "wrong");
    tempoSays.setId("practice-tempo-says");
    tempoSays.textProperty().bind(model.tempoSaysProperty());
    tempoSays.visibleProperty().bind(tempoSays.textProperty().isNotEmpty());
    tempoSays.managedProperty().bind(tempoSays.visibleProperty());
    FlowPane inBeats =
        styled(new FlowPane(tempo, new Label(words.say("lectern.tempo.unit"))), "with-unit");

    count.setId("practice-count");
    count.setItems(
        FXCollections.observableArrayList(IntStream.rangeClosed(0, Company.MOST).boxed().toList()));
    count.setConverter(Choices.said(many -> words.say("practice.count", many)));
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

    horn.setId("practice-horn");
    horn.selectedProperty().bindBidirectional(model.playedFirstProperty());
    begin.setId("practice-begin");
    begin.getStyleClass().add("primary");
    begin.setText(words.say("practice.begin"));
    begin.setOnAction(done -> model.begin());
    back.setId("practice-back");
    back.setText(words.say("practice.back"));
    back.getStyleClass().add("quiet");
    form.line(words.say("lectern.tempo"), inBeats, tempoSays);
    form.line(words.say("practice.own"), place);
    form.line(words.say("practice.company"), count);
    FlowPane commands = styled(new FlowPane(begin, back), "commands");
    VBox right =
        styled(
            styled(styled(new VBox(chosen, form, horn, commands), "ruled"), "stacked"), "column");
    TwoColumns columns = new TwoColumns(left, right, 0.5, 44);
    VBox.setVgrow(columns, Priority.ALWAYS);
    Label title = styled(Prose.of(words.say("view.practice")), "title");
    Label what = Prose.of(words.say("practice.what"));
    what.setMinHeight(Region.USE_PREF_SIZE); // the list gives way, in a low window
    VBox sheet = styled(styled(new VBox(title, what, columns), "sheet"), "practice-sheet");
    VBox.setVgrow(sheet, Priority.ALWAYS);
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    return page;
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
    place.getItems().setAll(model.places());
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
    manner.setConverter(Choices.said(model::say));
    manner.setValue(model.manners().get(at));
    manner.setAccessibleText(who);
    manner.setOnAction(done -> model.manners().set(at, manner.getValue()));
    return manner;
  }

  /** Looking for a drill takes the first that fits where the one taken does not. */
  private void selectWhatIsLeft() {
    if (drills.getItems().contains(model.drillProperty().get())) {
      drills.getSelectionModel().select(model.drillProperty().get());
    } else {
      drills.getSelectionModel().selectFirst();
    }
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }

  /** One line of the list; a double click on it or Enter begins. */
  private final class DrillCell extends ListCell<Drill> {
    DrillCell() {
      setOnMouseClicked(
          click -> {
            if (click.getClickCount() == 2) {
              model.begin();
            }
          });
    }

    @Override
    protected void updateItem(@Nullable Drill drill, boolean empty) {
      super.updateItem(drill, empty);
      setText(drill == null || empty ? "" : model.line(drill));
    }
  }
}

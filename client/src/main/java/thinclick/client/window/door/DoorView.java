package thinclick.client.window.door;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.StringProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import thinclick.client.window.words.Words;

/** The first page: a name, then a room here or a room elsewhere. */
public final class DoorView {
  private static final double FIELD_WIDTH = 240;
  private static final double TEXT_WIDTH = 860;
  private static final double COLUMN = 400;

  private final DoorModel model;
  private final Words words;
  private final TextField name = new TextField();
  private final ScrollPane root;

  public DoorView(DoorModel model, Words words) {
    this.model = model;
    this.words = words;
    this.root = new ScrollPane(createView());
    root.setFitToWidth(true);
    root.setFocusTraversable(false);
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the cursor where one begins. */
  public void begin() {
    name.requestFocus();
  }

  private Node createView() {
    Label title = styled(new Label("Thinclick"), "title");
    Label what = wrapped(new Label(words.say("door.what")));
    name.setId("name");
    name.setOnAction(done -> model.enter());
    VBox who =
        section(
            field(words.say("door.name"), name, model.nameProperty(), model.nameSaysProperty()));

    Button here = new Button(words.say("door.here.button"));
    here.setId("open-here");
    here.setOnAction(done -> model.openHere());
    CheckBox others = new CheckBox(words.say("door.here.others"));
    others.setId("for-others");
    others.selectedProperty().bindBidirectional(model.forOthersProperty());
    VBox open =
        section(
            styled(new Label(words.say("door.here")), "heading"),
            wrapped(new Label(words.say("door.here.what"))),
            others,
            here);

    TextField address = new TextField();
    address.setId("address");
    address.setPromptText(words.say("door.address.prompt"));
    TextField word = new TextField();
    word.setId("word");
    word.setPromptText(words.say("door.word.prompt"));
    Button join = new Button(words.say("door.join.button"));
    join.setId("join");
    join.setOnAction(done -> model.join());
    word.setOnAction(done -> model.join());
    address.setOnAction(done -> word.requestFocus());
    Button there = styled(new Button(words.say("door.there.button")), "quiet");
    there.setId("open-there");
    there.setOnAction(done -> model.openThere());
    HBox buttons = new HBox(24, join, there);
    buttons.setAlignment(Pos.CENTER_LEFT);
    VBox come =
        section(
            styled(new Label(words.say("door.join")), "heading"),
            wrapped(new Label(words.say("door.join.what"))),
            field(
                words.say("door.address"),
                address,
                model.addressProperty(),
                model.addressSaysProperty()),
            field(words.say("door.word"), word, model.wordProperty(), model.wordSaysProperty()),
            buttons);

    Label care = styled(wrapped(new Label(words.say("care.sound"))), "soft");
    open.setPrefWidth(COLUMN);
    come.setPrefWidth(COLUMN);
    HBox.setHgrow(open, Priority.ALWAYS);
    HBox.setHgrow(come, Priority.ALWAYS);
    HBox ways = new HBox(44, open, come);
    VBox sheet = styled(new VBox(title, what, who, ways, section(care)), "sheet");
    sheet.setMaxWidth(TEXT_WIDTH + 60);
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    return page;
  }

  private static Node field(
      String said, TextField field, StringProperty value, ReadOnlyStringProperty wrong) {
    Label label = new Label(said);
    label.setLabelFor(field);
    label.setMinWidth(100);
    field.textProperty().bindBidirectional(value);
    field.setPrefWidth(FIELD_WIDTH);
    field.setAccessibleText(said);
    Label says = styled(wrapped(new Label()), "wrong");
    says.setId(field.getId() + "-says");
    says.textProperty().bind(wrong);
    says.visibleProperty().bind(wrong.isNotEmpty());
    says.managedProperty().bind(wrong.isNotEmpty());
    HBox line = new HBox(12, label, field);
    line.setAlignment(Pos.BASELINE_LEFT);
    return new VBox(3, line, says);
  }

  private static VBox section(Node... children) {
    VBox section = styled(new VBox(10, children), "ruled");
    section.setAlignment(Pos.TOP_LEFT);
    return section;
  }

  private static Label wrapped(Label label) {
    label.setWrapText(true);
    label.setMaxWidth(TEXT_WIDTH);
    return label;
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}

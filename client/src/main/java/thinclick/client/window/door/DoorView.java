package thinclick.client.window.door;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.StringProperty;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import thinclick.client.find.FoundHost;
import thinclick.client.link.LeftRoom;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.words.Words;

/** The first page: a name, then a room here, a room elsewhere or none but one's own. */
public final class DoorView {
  private static final double FIELD_WIDTH = 240;

  private final DoorModel model;
  private final Words words;
  private final TextField name = new TextField();
  private final Label backSays = new Label();
  private final Button back;
  private final ScrollPane root;

  public DoorView(DoorModel model, Words words) {
    this.model = model;
    this.words = words;
    this.back = new Button(words.say("door.left.button"));
    this.root = new ScrollPane(createView());
    root.setFitToWidth(true);
    root.setFocusTraversable(false);
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Offers the way back into a room that an earlier run ended in, where there is one. */
  public void showLeft() {
    LeftRoom room = model.left();
    back.setVisible(room != null);
    backSays.setText(room == null ? "" : model.leftSays(room));
  }

  /** Puts the cursor where one begins. */
  public void begin() {
    (back.isVisible() ? back : name).requestFocus();
  }

  private Node createView() {
    Label title = styled(new Label("Thinclick"), "title");
    Label what = wrapped(new Label(words.say("door.what")));
    name.setId("name");
    name.setOnAction(done -> model.enter());
    VBox who =
        section(
            field(words.say("door.name"), name, model.nameProperty(), model.nameSaysProperty()));

    back.setId("come-back");
    back.setOnAction(
        done -> {
          model.comeBack();
          showLeft();
        });
    backSays.setId("come-back-says");
    VBox left = section(wrapped(backSays), back);
    left.visibleProperty().bind(back.visibleProperty());
    left.managedProperty().bind(back.visibleProperty());
    back.setVisible(false);

    Button here = new Button(words.say("door.here.button"));
    here.setId("open-here");
    here.setOnAction(done -> model.openHere());
    CheckBox others = new CheckBox(words.say("door.here.others"));
    others.setWrapText(true);
    others.setId("for-others");
    others.selectedProperty().bindBidirectional(model.forOthersProperty());
    Label firewall = styled(wrapped(new Label(words.say("door.here.firewall"))), "soft");
    firewall.setId("door-firewall");
    firewall.visibleProperty().bind(others.selectedProperty());
    firewall.managedProperty().bind(others.selectedProperty());
    VBox open =
        section(
            styled(wrapped(new Label(words.say("door.here"))), "heading"),
            wrapped(new Label(words.say("door.here.what"))),
            classes(),
            others,
            firewall,
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
    address.setOnAction(
        done -> {
          if (model.addressIsEnough()) {
            model.join();
          } else {
            word.requestFocus();
          }
        });
    VBox found = new VBox(2);
    found.setId("found");
    model
        .found()
        .addListener((ListChangeListener<FoundHost>) any -> showFound(found, address, word));
    showFound(found, address, word);
    Button there = styled(new Button(words.say("door.there.button")), "quiet");
    there.setId("open-there");
    there.setOnAction(done -> model.openThere());
    FlowPane buttons = new FlowPane(24, 8, join, there);
    buttons.setRowValignment(VPos.CENTER);
    VBox come =
        section(
            styled(wrapped(new Label(words.say("door.join"))), "heading"),
            wrapped(new Label(words.say("door.join.what"))),
            found,
            field(
                words.say("door.address"),
                address,
                model.addressProperty(),
                model.addressSaysProperty()),
            field(words.say("door.word"), word, model.wordProperty(), model.wordSaysProperty()),
            buttons);

    Button practise = new Button(words.say("door.practise.button"));
    practise.setId("practise");
    practise.setOnAction(done -> model.practise());
    VBox alone =
        section(
            styled(wrapped(new Label(words.say("door.practise"))), "heading"),
            wrapped(new Label(words.say("door.practise.what"))),
            practise);
    Button check = new Button(words.say("door.check.button"));
    check.setId("check");
    check.setOnAction(done -> model.check());
    VBox chair =
        section(
            styled(wrapped(new Label(words.say("view.check"))), "heading"),
            wrapped(new Label(words.say("door.check.what"))),
            check);
    alone.getStyleClass().add("column");
    chair.getStyleClass().add("column");
    TwoColumns more = new TwoColumns(alone, chair, 0.5, 44);

    Label care = styled(wrapped(new Label(words.say("care.sound"))), "soft");
    Label names = styled(wrapped(new Label(words.say("care.names"))), "soft");
    names.setId("door-names");
    open.getStyleClass().add("column");
    come.getStyleClass().add("column");
    TwoColumns ways = new TwoColumns(open, come, 0.5, 44);
    VBox sheet =
        styled(new VBox(title, what, left, who, ways, more, section(care, names)), "sheet");
    sheet.getStyleClass().add("measure");
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    return page;
  }

  /** A title to write, and those that are kept here to choose from. */
  private Node classes() {
    TextField title = new TextField();
    title.setId("class");
    title.setPromptText(words.say("door.class.prompt"));
    title.setOnAction(done -> model.openHere());
    FlowPane kept = new FlowPane(16, 2);
    kept.setId("door-classes");
    ListChangeListener<String> show =
        any -> {
          kept.getChildren().clear();
          for (String one : model.classes()) {
            Button choose = styled(new Button(one), "quiet");
            choose.setOnAction(done -> model.classTitleProperty().set(one));
            kept.getChildren().add(choose);
          }
          kept.setManaged(!model.classes().isEmpty());
        };
    model.classes().addListener(show);
    kept.setManaged(false);
    Node line =
        field(
            words.say("door.class"),
            title,
            model.classTitleProperty(),
            new ReadOnlyStringWrapper(""));
    return new VBox(4, line, kept);
  }

  /**
   * A line for each host that says it is there; Enter on one leads to its room word. Whoever is on
   * a line stays on it when others come and go; where it is gone itself, an address can be written.
   */
  private void showFound(VBox found, TextField address, TextField word) {
    Object on =
        found.getChildren().stream()
            .filter(Node::isFocused)
            .map(Node::getUserData)
            .findFirst()
            .orElse(null);
    found.getChildren().clear();
    for (FoundHost host : model.found()) {
      Button line = new Button(model.foundSays(host));
      line.setUserData(host);
      line.getStyleClass().add("quiet");
      line.setWrapText(true);
      line.setOnAction(
          done -> {
            model.take(host);
            word.requestFocus();
          });
      found.getChildren().add(line);
      if (host.equals(on)) {
        line.requestFocus();
      }
    }
    if (on != null && !model.found().contains(on)) {
      address.requestFocus();
    }
    if (model.found().isEmpty()) {
      found.getChildren().add(styled(wrapped(new Label(words.say("door.found.none"))), "soft"));
    }
  }

  private static Node field(
      String said, TextField field, StringProperty value, ReadOnlyStringProperty wrong) {
    Label label = new Label(said);
    label.setLabelFor(field);
    label.getStyleClass().add("field-name");
    field.textProperty().bindBidirectional(value);
    field.setPrefWidth(FIELD_WIDTH);
    field.setAccessibleText(said);
    Label says = styled(wrapped(new Label()), "wrong");
    says.setId(field.getId() + "-says");
    says.textProperty().bind(wrong);
    says.visibleProperty().bind(wrong.isNotEmpty());
    says.managedProperty().bind(wrong.isNotEmpty());
    FlowPane line = new FlowPane(12, 2, label, field);
    line.setRowValignment(VPos.BASELINE);
    return new VBox(3, line, says);
  }

  private static VBox section(Node... children) {
    VBox section = styled(new VBox(10, children), "ruled");
    section.setAlignment(Pos.TOP_LEFT);
    return section;
  }

  private static Label wrapped(Label label) {
    label.setWrapText(true);
    return label;
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}

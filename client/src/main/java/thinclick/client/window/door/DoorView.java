package thinclick.client.window.door;

import static thinclick.client.window.look.Styled.styled;

import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.collections.ListChangeListener;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import thinclick.client.find.FoundHost;
import thinclick.client.link.LeftRoom;
import thinclick.client.window.look.Example;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.Ground;
import thinclick.client.window.look.InView;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.look.WholeLines;
import thinclick.client.window.words.Words;

/** The first page: a name, then a room here, a room elsewhere or none but one's own. */
public final class DoorView {
  private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");

  private final DoorModel model;
  private final Words words;
  private final TextField name = new TextField();
  private final TextField address = new TextField();
  private final TextField word = new TextField();

  /** The own name, a room here and a room elsewhere: fields one below the other. */
  private final Form who = new Form();

  private final Form house = new Form();
  private final Form where = new Form();
  private final Label backSays = Prose.of("");
  private final Button back;
  private final PagePane root;

  public DoorView(DoorModel model, Words words) {
    this.model = model;
    this.words = words;
    this.back = new Button(words.say("door.left.button"));
    VBox sheet = sheet();
    Ground page = styled(new Ground(sheet), "shallow");
    this.root = new PagePane(page);
    WholeLines.keep(root, page, sheet);
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

  private VBox sheet() {
    Label title = styled(new Label("Thinclick"), "title");
    Label what = Prose.of(words.say("door.what"));
    name.setId("name");
    name.setOnAction(done -> model.enter());
    fill(who, "door.name", name, model.name());

    back.setId("come-back");
    back.setOnAction(
        done -> {
          model.comeBack();
          showLeft();
        });
    backSays.setId("come-back-says");
    VBox left = section(wayBack());
    left.visibleProperty().bind(back.visibleProperty());
    left.managedProperty().bind(back.visibleProperty());
    back.setVisible(false);
    // Whoever was in a room knows what this is for; what else is offered stays in view.
    what.visibleProperty().bind(back.visibleProperty().not());
    what.managedProperty().bind(what.visibleProperty());

    VBox alone =
        section(
            Prose.of(words.say("door.practise.what")),
            button("practise", "door.practise.button", model::practise));
    VBox chair =
        section(
            Prose.of(words.say("door.check.what")),
            button("check", "door.check.button", model::check));
    TwoColumns more = columns(alone, chair);
    TwoColumns ways = columns(open(), come());

    Label care = styled(Prose.of(words.say("care.sound")), "soft");
    Label names = styled(Prose.of(words.say("door.names")), "soft");
    names.setId("door-names");
    Form.align(who, house, where);
    TwoColumns named = columns(section(who), section(names));
    VBox sheet = styled(new VBox(title, what, left, named, ways, more, section(care)), "sheet");
    sheet.getStyleClass().add("door-sheet");
    model.onWrong(this::attend);
    return sheet;
  }

  /** What was left, beside the way back into it. */
  private Node wayBack() {
    HBox line = styled(new HBox(backSays, back), "way-back");
    HBox.setHgrow(backSays, Priority.ALWAYS);
    backSays.setMinWidth(0);
    backSays.setMaxWidth(Double.MAX_VALUE);
    back.setMinWidth(Region.USE_PREF_SIZE);
    return line;
  }

  /** A room on this computer. */
  private VBox open() {
    CheckBox others = Prose.in(new CheckBox(words.say("door.here.others")));
    others.setId("for-others");
    others.selectedProperty().bindBidirectional(model.forOthersProperty());
    Label firewall = styled(Prose.of(words.say("door.here.firewall")), "soft");
    firewall.setId("door-firewall");
    firewall.visibleProperty().bind(others.selectedProperty());
    firewall.managedProperty().bind(others.selectedProperty());
    return section(
        heading("door.here"),
        Prose.of(words.say("door.here.what")),
        classes(),
        others,
        firewall,
        button("open-here", "door.here.button", model::openHere));
  }

  /** A room elsewhere. */
  private VBox come() {
    address.setId("address");
    Example.in(address, words.say("door.address.prompt"));
    word.setId("word");
    Example.in(word, words.say("door.word.prompt"));
    word.setOnAction(done -> model.join());
    address.setOnAction(
        done -> {
          if (model.addressIsEnough()) {
            model.join();
          } else {
            word.requestFocus();
          }
        });
    VBox found = styled(new VBox(), "close-block");
    found.setId("found");
    model.found().addListener((ListChangeListener<FoundHost>) any -> showFound(found));
    showFound(found);
    Label what = Prose.of("");
    what.textProperty()
        .bind(
            Bindings.when(Bindings.isEmpty(model.found()))
                .then(words.say("door.join.what.none"))
                .otherwise(words.say("door.join.what")));
    fill(where, "door.address", address, model.address());
    fill(where, "door.word", word, model.word());
    Button there = styled(button("open-there", "door.there.button", model::openThere), "quiet");
    FlowPane commands =
        styled(new FlowPane(button("join", "door.join.button", model::join), there), "commands");
    return section(heading("door.join"), what, found, where, commands);
  }

  /** Puts the cursor where something has to be put right. */
  private void attend(Entry entry) {
    TextField field = entry == model.name() ? name : entry == model.address() ? address : word;
    InView.bring(field.getParent());
    field.requestFocus();
    field.end();
  }

  /** A title to write, and those that are kept here to choose from. */
  private Node classes() {
    TextField title = new TextField();
    title.setId("class");
    Example.in(title, words.say("door.class.prompt"));
    title.setOnAction(done -> model.openHere());
    title.setAccessibleText(words.say("door.class"));
    title.textProperty().bindBidirectional(model.classTitleProperty());
    FlowPane kept = styled(new FlowPane(), "options");
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
    house.line(words.say("door.class"), title, kept);
    return house;
  }

  /**
   * A line for each host that says it is there; Enter on one leads to its room word. Whoever is on
   * a line stays on it when others come and go; where it is gone itself, an address can be written.
   */
  private void showFound(VBox found) {
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
      found
          .getChildren()
          .add(styled(styled(Prose.of(words.say("door.found.none")), "soft"), "none-found"));
    }
  }

  /** A line of a form; what is wrong with it stands below, and the field is marked. */
  private void fill(Form form, String key, TextField field, Entry entry) {
    ReadOnlyStringProperty wrong = entry.saysProperty();
    field.textProperty().bindBidirectional(entry.writtenProperty());
    field.setAccessibleText(words.say(key));
    Label says = styled(Prose.of(""), "wrong");
    says.setId(field.getId() + "-says");
    says.textProperty().bind(wrong);
    says.visibleProperty().bind(wrong.isNotEmpty());
    says.managedProperty().bind(wrong.isNotEmpty());
    wrong.addListener(
        (any, old, now) -> {
          field.pseudoClassStateChanged(WRONG, !now.isEmpty());
          field.setAccessibleHelp(now);
        });
    form.line(words.say(key), field, says);
  }

  private Button button(String id, String key, Runnable does) {
    Button button = new Button(words.say(key));
    button.setId(id);
    button.setOnAction(done -> does.run());
    return button;
  }

  private Label heading(String key) {
    return styled(Prose.of(words.say(key)), "heading");
  }

  private static TwoColumns columns(VBox left, VBox right) {
    return new TwoColumns(styled(left, "column"), styled(right, "column"), 0.5, 44);
  }

  private static VBox section(Node... children) {
    VBox section = styled(new VBox(children), "ruled");
    section.getStyleClass().add("block");
    section.setAlignment(Pos.TOP_LEFT);
    return section;
  }
}

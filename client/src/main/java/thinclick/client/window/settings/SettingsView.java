package thinclick.client.window.settings;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Look.Contrast;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.words.Language;
import thinclick.client.window.words.Words;

/** The page of settings: how the window looks, and which keys it knows. */
public final class SettingsView {
  /** Keys and what they do, in the order in which they are needed. */
  private static final List<String> KEYS =
      List.of(
          "tap", "help", "views", "region", "reader", "deal", "countIn", "stop", "size", "paper");

  private final SettingsModel model;
  private final Words words;
  private final ScrollPane root;
  private final ToggleGroup shades = new ToggleGroup();

  public SettingsView(SettingsModel model, Words words) {
    this.model = model;
    this.words = words;
    root = new ScrollPane(createView());
    root.setFitToWidth(true);
    root.setFocusTraversable(false);
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the focus on what is set now. */
  public void begin() {
    if (shades.getSelectedToggle() instanceof Node selected) {
      selected.requestFocus();
    }
  }

  private Node createView() {
    VBox looks =
        section(
            heading("settings.look"),
            choice(
                "shade",
                shades,
                Shade.values(),
                Look::shade,
                look -> model.set(model().with(look))),
            choice(
                "contrast",
                new ToggleGroup(),
                Contrast.values(),
                Look::contrast,
                contrast -> model.set(model().with(contrast))),
            size(),
            language(),
            soft("settings.language.next"),
            partInWords(),
            soft("settings.still"));
    VBox keys = section(heading("settings.keys"), keys(), soft("settings.speech"));
    looks.getStyleClass().add("column");
    keys.getStyleClass().add("column");
    Label title = styled(new Label(words.say("view.settings")), "title");
    VBox sheet = styled(new VBox(title, new TwoColumns(looks, keys, 0.5, 44)), "sheet");
    sheet.getStyleClass().add("measure");
    VBox page = styled(new VBox(sheet), "page");
    page.setAlignment(Pos.TOP_CENTER);
    return page;
  }

  private Look model() {
    return model.lookProperty().get();
  }

  private <E extends Enum<E>> Node choice(
      String what, ToggleGroup group, E[] values, Function<Look, E> now, Consumer<E> set) {
    Label name = styled(new Label(words.say("settings." + what)), "field-name");
    FlowPane options = new FlowPane(18, 6);
    for (E value : values) {
      String key = "settings." + what + "." + value.name().toLowerCase(Locale.ROOT);
      RadioButton button = new RadioButton(words.say(key));
      button.setId(what + "-" + value.name().toLowerCase(Locale.ROOT));
      button.setToggleGroup(group);
      button.setAccessibleText(name.getText() + ": " + button.getText());
      button.setSelected(now.apply(model()) == value);
      button.setOnAction(done -> set.accept(value));
      model
          .lookProperty()
          .addListener((any, old, look) -> button.setSelected(now.apply(look) == value));
      options.getChildren().add(button);
    }
    return beside(name, options);
  }

  private Node language() {
    ToggleGroup group = new ToggleGroup();
    Label name = styled(new Label(words.say("settings.language")), "field-name");
    FlowPane options = new FlowPane(18, 6);
    for (Language value : Language.values()) {
      String id = value.name().toLowerCase(Locale.ROOT);
      RadioButton button = new RadioButton(words.say("settings.language." + id));
      button.setId("language-" + id);
      button.setToggleGroup(group);
      button.setAccessibleText(name.getText() + ": " + button.getText());
      button.setSelected(model.languageProperty().get() == value);
      button.setOnAction(done -> model.set(value));
      options.getChildren().add(button);
    }
    return beside(name, options);
  }

  private Node size() {
    Label name = styled(new Label(words.say("settings.size")), "field-name");
    Button smaller = new Button(words.say("settings.size.smaller"));
    smaller.setId("smaller");
    smaller.setOnAction(done -> model.grow(-1));
    Button larger = new Button(words.say("settings.size.larger"));
    larger.setId("larger");
    larger.setOnAction(done -> model.grow(1));
    Label percent = new Label(percent(model()));
    percent.setId("size-now");
    model.lookProperty().addListener((any, old, look) -> percent.setText(percent(look)));
    FlowPane line = new FlowPane(14, 6, smaller, larger, percent);
    line.setRowValignment(VPos.BASELINE);
    return beside(name, line);
  }

  /** What can be chosen, in a column of its own beside what it is about. */
  private static Node beside(Label name, Node options) {
    name.setWrapText(true);
    HBox line = new HBox(14, name, options);
    HBox.setHgrow(options, Priority.ALWAYS);
    line.setAlignment(Pos.BASELINE_LEFT);
    return line;
  }

  private String percent(Look look) {
    return words.say("settings.size.now", Math.round(look.textSize() / Look.USUAL_TEXT * 100));
  }

  private Node partInWords() {
    CheckBox box = new CheckBox(words.say("settings.words"));
    box.setId("part-in-words");
    box.setWrapText(true);
    box.setSelected(model().partInWords());
    box.setOnAction(done -> model.set(model().withPartInWords(box.isSelected())));
    return box;
  }

  private Node keys() {
    GridPane grid = new GridPane();
    grid.setHgap(18);
    grid.setVgap(6);
    for (int line = 0; line < KEYS.size(); line++) {
      Label key = styled(new Label(words.say("settings.key." + KEYS.get(line))), "strong");
      key.setMinWidth(Region.USE_PREF_SIZE);
      GridPane.setValignment(key, VPos.TOP);
      grid.add(key, 0, line);
      grid.add(wrapped(new Label(words.say("settings.does." + KEYS.get(line)))), 1, line);
    }
    return grid;
  }

  private Label heading(String key) {
    return styled(wrapped(new Label(words.say(key))), "heading");
  }

  private Label soft(String key) {
    return styled(wrapped(new Label(words.say(key))), "soft");
  }

  private static VBox section(Node... children) {
    return styled(new VBox(14, children), "ruled");
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

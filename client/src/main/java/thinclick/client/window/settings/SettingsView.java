package thinclick.client.window.settings;

import static thinclick.client.window.look.Styled.styled;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.beans.property.ObjectProperty;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import thinclick.client.sound.CountIn;
import thinclick.client.window.look.Choices;
import thinclick.client.window.look.Form;
import thinclick.client.window.look.Ground;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Look.Contrast;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.look.WholeLines;
import thinclick.client.window.words.Language;
import thinclick.client.window.words.Words;

/** The page of settings: how the window looks, how it counts in, which keys it knows. */
public final class SettingsView {
  /** Keys and what they do, in the order in which they are needed. */
  private static final List<String> KEYS =
      List.of(
          "tap", "help", "views", "region", "reader", "page", "deal", "countIn", "rescue", "pause",
          "stop", "size", "paper");

  private final SettingsModel model;
  private final ObjectProperty<CountIn> countIn;
  private final Words words;
  private final PagePane root;
  private final ToggleGroup shades = new ToggleGroup();

  /**
   * @param countIn how the count-in sounds at this computer
   */
  public SettingsView(SettingsModel model, ObjectProperty<CountIn> countIn, Words words) {
    this.model = model;
    this.countIn = countIn;
    this.words = words;
    VBox sheet = sheet();
    Ground page = new Ground(sheet);
    root = new PagePane(page);
    WholeLines.keep(root, page, sheet);
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

  private VBox sheet() {
    Form form = new Form();
    choice(
        form, "shade", shades, Shade.values(), Look::shade, look -> model.set(model().with(look)));
    choice(
        form,
        "contrast",
        new ToggleGroup(),
        Contrast.values(),
        Look::contrast,
        contrast -> model.set(model().with(contrast)));
    form.line(words.say("settings.size"), size());
    form.line(words.say("settings.language"), language(), soft("settings.language.next"));
    VBox looks =
        section(
            heading("settings.look"),
            form,
            partInWords(),
            soft("settings.speech"),
            soft("settings.still"));
    VBox keys = section(heading("settings.keys"), keys(), soft("settings.keys.more"));
    VBox counts = section(heading("settings.countIn"), countIn(), soft("settings.countIn.says"));
    VBox left = styled(styled(new VBox(looks, counts), "block"), "column");
    keys.getStyleClass().add("column");
    Label title = styled(new Label(words.say("view.settings")), "title");
    VBox sheet = styled(new VBox(title, new TwoColumns(left, keys, 0.5, 44)), "sheet");
    sheet.getStyleClass().add("settings-sheet");
    return sheet;
  }

  private Look model() {
    return model.lookProperty().get();
  }

  private <E extends Enum<E>> void choice(
      Form form,
      String what,
      ToggleGroup group,
      E[] values,
      Function<Look, E> now,
      Consumer<E> set) {
    Supplier<E> is = () -> now.apply(model());
    Map<E, RadioButton> buttons = options("settings." + what, what, group, values, is, set);
    buttons.forEach(
        (value, button) ->
            model
                .lookProperty()
                .addListener((any, old, look) -> follow(button, group, now.apply(look) == value)));
    form.line(words.say("settings." + what), line(buttons));
  }

  /** Where a key has changed what is set, the focus goes on being on what is set. */
  private static void follow(RadioButton button, ToggleGroup group, boolean set) {
    boolean focused =
        group.getToggles().stream().anyMatch(one -> one instanceof Node node && node.isFocused());
    button.setSelected(set);
    if (set && focused) {
      button.requestFocus();
    }
  }

  /**
   * One button for each value, in order.
   *
   * @param key of what is chosen, in the bundle
   * @param id what the buttons' own begin with
   */
  private <E extends Enum<E>> Map<E, RadioButton> options(
      String key, String id, ToggleGroup group, E[] values, Supplier<E> now, Consumer<E> set) {
    Map<E, RadioButton> buttons = new LinkedHashMap<>();
    for (E value : values) {
      String name = value.name().toLowerCase(Locale.ROOT);
      String says = Words.begun(words.say(key + "." + name));
      RadioButton button = styled(new RadioButton(says), "settings-option");
      button.setId(id + "-" + name);
      button.setToggleGroup(group);
      button.setAccessibleText(words.say(key) + ": " + says);
      button.setSelected(now.get() == value);
      Choices.onChosen(button, () -> now.get() == value, () -> set.accept(value));
      buttons.put(value, button);
    }
    return buttons;
  }

  private static FlowPane line(Map<?, RadioButton> buttons) {
    FlowPane line = styled(new FlowPane(), "options");
    line.getChildren().addAll(buttons.values());
    return line;
  }

  private FlowPane language() {
    return line(
        options(
            "settings.language",
            "language",
            new ToggleGroup(),
            Language.values(),
            () -> model.languageProperty().get(),
            model::set));
  }

  private FlowPane countIn() {
    return line(
        options(
            "settings.countIn",
            "count-in",
            new ToggleGroup(),
            CountIn.values(),
            countIn::get,
            countIn::set));
  }

  private FlowPane size() {
    Button smaller = new Button(words.say("settings.size.smaller"));
    smaller.setId("smaller");
    smaller.setOnAction(done -> model.grow(-1));
    Button larger = new Button(words.say("settings.size.larger"));
    larger.setId("larger");
    larger.setOnAction(done -> model.grow(1));
    Label percent = new Label(percent(model()));
    percent.setId("size-now");
    model.lookProperty().addListener((any, old, look) -> percent.setText(percent(look)));
    return styled(new FlowPane(smaller, larger, percent), "options");
  }

  private String percent(Look look) {
    return words.say("settings.size.now", Math.round(look.textSize() / Look.USUAL_TEXT * 100));
  }

  private Node partInWords() {
    CheckBox box = Prose.in(new CheckBox(words.say("settings.words")));
    box.setId("part-in-words");
    box.setSelected(model().partInWords());
    box.setOnAction(done -> model.set(model().withPartInWords(box.isSelected())));
    return box;
  }

  private Node keys() {
    GridPane grid = styled(new GridPane(), "keys-table");
    for (int line = 0; line < KEYS.size(); line++) {
      Label key = styled(new Label(words.say("settings.key." + KEYS.get(line))), "strong");
      key.setMinWidth(Region.USE_PREF_SIZE);
      GridPane.setValignment(key, VPos.TOP);
      grid.add(key, 0, line);
      grid.add(Prose.of(words.say("settings.does." + KEYS.get(line))), 1, line);
    }
    return grid;
  }

  private Label heading(String key) {
    return styled(Prose.of(words.say(key)), "heading");
  }

  private Label soft(String key) {
    return styled(Prose.of(words.say(key)), "soft");
  }

  private static VBox section(Node... children) {
    return styled(styled(new VBox(children), "ruled"), "block");
  }
}

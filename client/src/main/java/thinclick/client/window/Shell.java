package thinclick.client.window;

import static thinclick.client.window.look.Styled.styled;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Orientation;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import thinclick.client.sound.Loudness;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;

/** Around every page: the words to go by above, the click's level, one sentence below. */
final class Shell {

  /** A window lower than this, in sizes of its text, has no room to spare around its page. */
  private static final double CRAMPED_EMS = 40;

  private static final String CRAMPED = "cramped";

  private final BorderPane root = new BorderPane();
  private final FlowPane words = styled(new FlowPane(), "head-words");
  private final HBox controls = styled(new HBox(), "head-words");
  private final FlowPane head = new FlowPane(words, controls);
  private final Label name = styled(new Label("Thinclick"), "strong");
  private final Map<View, ToggleButton> tabs = new EnumMap<>(View.class);
  private final ToggleGroup group = new ToggleGroup();
  private final Label sentence = Prose.in(new Label());
  private final Label tapsSay = styled(Prose.of(""), "soft");
  private final Foot foot;
  private final CheckBox silent = new CheckBox();
  private final Button leave = new Button();
  private double em = Look.USUAL_TEXT;
  private View view = View.DOOR;
  private boolean dealt;
  private boolean takeRuns;
  private String told = "";

  Shell(Words said, SoundDesk sound, Taps taps) {
    head.getStyleClass().add("head");
    head.setMinWidth(0); // else words set for a wide window would hold a narrower one open
    words.getStyleClass().add("head-tabs");
    words.getChildren().add(name);
    for (View view : View.values()) {
      if (view.digit() > 0 || view == View.DOOR || view == View.HELP) {
        ToggleButton tab = styled(new ToggleButton(said.say(view.key())), "tab-word");
        tab.setToggleGroup(group);
        tab.setId("tab-" + view.name().toLowerCase(Locale.ROOT));
        tab.managedProperty().bind(tab.visibleProperty());
        tabs.put(view, tab);
        tab.setMinWidth(Region.USE_PREF_SIZE);
        words.getChildren().add(tab);
      }
    }
    leave.setText(said.say("shell.leave"));
    leave.setId("leave");
    leave.getStyleClass().add("quiet");
    leave.setVisible(false);
    leave.managedProperty().bind(leave.visibleProperty());
    leave.setMinWidth(Region.USE_PREF_SIZE);
    name.setMinWidth(Region.USE_PREF_SIZE);
    name.managedProperty().bind(name.visibleProperty());
    controls.getChildren().addAll(level(said, sound), silent(said, sound), leave);
    head.widthProperty().addListener(any -> spread());
    words.layoutBoundsProperty().addListener(any -> spread());
    controls.layoutBoundsProperty().addListener(any -> spread());

    sentence.setId("sentence");
    sentence.getStyleClass().add("sentence");
    Label soundSays = styled(Prose.of(""), "soft");
    soundSays.setId("sound-says");
    soundSays.textProperty().bind(sound.saysProperty());
    tapsSay.setId("taps-say");
    tapsSay.textProperty().bind(taps.saysProperty());
    foot = new Foot(sentence, tapsSay, soundSays);
    foot.widthProperty().addListener(any -> leaveRoom());
    root.setTop(head);
    root.setBottom(foot);
  }

  /**
   * Where the window is low for its text, head and foot keep close; where there is nothing to play,
   * the sentence has the place of what to tap on.
   */
  private void leaveRoom() {
    double high = root.getScene() == null ? Double.MAX_VALUE : root.getScene().getHeight();
    boolean cramped = high < CRAMPED_EMS * em;
    if (cramped != root.getStyleClass().contains(CRAMPED)) {
      if (cramped) {
        root.getStyleClass().add(CRAMPED);
      } else {
        root.getStyleClass().remove(CRAMPED);
      }
    }
    name.setVisible(!cramped || nameFits()); // the window's title has it as well
    boolean playing = (view == View.STAND && dealt) || view == View.CHECK || takeRuns;
    foot.tapped(playing);
    tell();
  }

  /** Whether the head takes no further line for the program's name. */
  private boolean nameFits() {
    double room = room();
    double others = wide(false);
    double more = name.prefWidth(-1) + words.getHgap();
    double beside = controls.prefWidth(-1) + head.getHgap() + 1;
    return others + more + (others + beside <= room ? beside : 0) <= room;
  }

  private double room() {
    return head.getWidth() - head.snappedLeftInset() - head.snappedRightInset();
  }

  /** How wide the head's words are in one line, pixels. */
  private double wide(boolean withName) {
    double all = -words.getHgap();
    for (Node word : words.getChildren()) {
      boolean counts = word == name ? withName : word.isManaged();
      all += counts ? word.prefWidth(-1) + words.getHgap() : 0;
    }
    return all;
  }

  /**
   * Where the foot has no room for it, what to tap on is said once a part can be read, and before
   * it is played.
   */
  private void tell() {
    boolean after = view == View.STAND && dealt && !takeRuns && !foot.hasRoomForTaps(told);
    String now = after ? told + " " + tapsSay.getText() : told;
    if (!now.equals(sentence.getText())) {
      sentence.setText(now);
    }
  }

  /**
   * The controls stand to the right as long as both fit in one line, else in a line below; words
   * that are too many for a line take another.
   */
  private void spread() {
    double room = room();
    double both = wide(name.isManaged()) + 1 + controls.prefWidth(-1) + head.getHgap();
    double wanted = both <= room ? room - controls.prefWidth(-1) - head.getHgap() - 1 : room;
    if (Math.abs(words.getPrefWidth() - wanted) > 0.5) {
      words.setPrefWidth(wanted);
    }
  }

  private static Node level(Words words, SoundDesk sound) {
    Label label = styled(new Label(words.say("shell.level")), "soft");
    Slider slider = new Slider(Loudness.SOFTEST_DBFS, Loudness.CEILING_DBFS, Loudness.FIRST_DBFS);
    slider.setId("level");
    slider.setOrientation(Orientation.HORIZONTAL);
    slider.setPrefWidth(130);
    slider.setBlockIncrement(3);
    slider.setAccessibleText(words.say("shell.level"));
    slider.valueProperty().bindBidirectional(sound.levelProperty());
    label.setLabelFor(slider);
    label.setMinWidth(Region.USE_PREF_SIZE);
    HBox box = new HBox(8, label, slider);
    box.setAlignment(Pos.CENTER_LEFT);
    return box;
  }

  private CheckBox silent(Words words, SoundDesk sound) {
    silent.setText(words.say("shell.silent"));
    silent.setId("silent");
    silent.setMinWidth(Region.USE_PREF_SIZE);
    silent.selectedProperty().bindBidirectional(sound.mutedProperty());
    return silent;
  }

  Parent root() {
    return root;
  }

  /** The size of the text in pixels; called again whenever the window is higher or lower. */
  void dress(double textSize) {
    em = textSize;
    leaveRoom();
  }

  /**
   * Which pages can be gone to now. What is there before a take or after it keeps its word while it
   * cannot be gone to, so that the head is as high in a take as before and the page stays in place.
   *
   * @param there whether it is there at some time of the rehearsal
   * @param offered whether it can be gone to now
   */
  void offer(View view, boolean there, boolean offered) {
    ToggleButton tab = tabs.get(view);
    if (tab != null) {
      tab.setVisible(there);
      tab.setDisable(!offered);
    }
    if (view == View.STAND) {
      leave.setVisible(offered);
    }
  }

  /**
   * Told when there is something to play, and when a take begins and is over.
   *
   * @param isDealt whether a part is dealt that is still to be played
   * @param runs whether a take runs
   */
  void follow(boolean isDealt, boolean runs) {
    dealt = isDealt;
    takeRuns = runs;
    leaveRoom();
  }

  /** True where the focus is in the head of the window. */
  boolean headHasFocus() {
    Node owner = head.getScene() == null ? null : head.getScene().getFocusOwner();
    for (Node node = owner; node != null; node = node.getParent()) {
      if (node.equals(head)) {
        return true;
      }
    }
    return false;
  }

  /** Puts the focus on the word of the page in view, else on the first. */
  void focusHead() {
    tabs.values().stream()
        .filter(tab -> tab.isVisible() && !tab.isDisabled() && tab.isSelected())
        .findFirst()
        .or(
            () ->
                tabs.values().stream()
                    .filter(tab -> tab.isVisible() && !tab.isDisabled())
                    .findFirst())
        .ifPresent(Node::requestFocus);
  }

  void onGo(Consumer<View> go) {
    tabs.forEach((view, tab) -> tab.setOnAction(done -> go.accept(view)));
  }

  /** Nobody is silenced in a check: its clicks are to be heard, and one stops it instead. */
  void whileChecking(ObservableValue<Boolean> checking) {
    silent.disableProperty().bind(checking);
  }

  void onLeave(Runnable does) {
    leave.setOnAction(done -> does.run());
  }

  /** Shows a page. */
  void show(View shown, Node page) {
    view = shown;
    leaveRoom();
    root.setCenter(page);
    // Practising alone is behind the door, whose word says so.
    group.selectToggle(tabs.get(shown == View.PRACTICE ? View.DOOR : shown));
  }

  void say(String now, boolean urgent) {
    foot.urgent(urgent);
    told = now;
    tell();
  }
}

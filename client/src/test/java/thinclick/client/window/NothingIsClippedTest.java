package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.find.FoundHost;
import thinclick.client.link.RoomAddress;
import thinclick.client.sound.CountIn;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.WideTable;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;

/**
 * On every page, at twice the usual size and in languages that need more room: no words are cut
 * short, nothing stands outside the window, no sentence of a German page is English, and everything
 * that can be focused has a role and a name for screen readers.
 */
class NothingIsClippedTest extends WindowCase {
  private static final String BUNDLE = "thinclick.client.window.words.window";

  private final List<String> clipped = new ArrayList<>();
  private final List<String> unnamed = new ArrayList<>();
  private final List<String> english = new ArrayList<>();

  @ParameterizedTest
  @CsvSource({"15, en, 1.4", "30, de, 1.0", "30, en, 1.4"})
  void wordsAreWholeOnEveryPage(double textSize, String language, double stretch) throws Exception {
    Locale locale = Locale.forLanguageTag(language);
    words = stretch == 1 ? Words.in(locale) : Words.of(new Stretched(stretch), locale);
    open(textSize);
    look("door");
    cautions("care.sound", "door.names");
    foundHostsComeAndGo();
    control(KeyCode.DIGIT7);
    title("view.settings");
    look("settings");
    thePaperIsTurnedByTheKeyboard();
    theCountInIsChosenByTheKeyboard();
    robot.type(KeyCode.F1);
    title("view.help");
    look("help");
    theHelpIsTurnedByTheKeyboard();
    robot.type(KeyCode.F1);
    title("view.settings");
    control(KeyCode.DIGIT6);
    title("view.season");
    look("season");
    control(KeyCode.DIGIT1);
    title("view.check");
    look("check");
    cautions("care.sound"); // beside Begin it stands where a click can be heard
    robot.interact(() -> ((ToggleButton) stage.getScene().lookup("#tab-door")).fire());
    title("view.door");
    robot.interact(
        () -> {
          ((TextField) stage.getScene().lookup("#name")).setText("Ana");
          ((Button) stage.getScene().lookup("#practise")).fire();
        });
    title("view.practice");
    look("practice");
    robot.interact(() -> ((Button) stage.getScene().lookup("#practice-back")).fire());
    title("view.door");
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.type(KeyCode.ENTER);
    title("view.lectern");
    robot.type(KeyCode.ENTER);
    until(() -> session.state().title() != null);
    robot.interact(() -> session.addSeat("Ben", why -> {}));
    until(() -> session.state().people().size() == 2);
    control(KeyCode.D);
    until(() -> session.state().phase() == Phase.DEALT);
    until(() -> session.further().get(0).state().ownPart() != null);
    look("lectern");
    cautions("care.names");
    control(KeyCode.DIGIT2);
    title("view.stand");
    look("stand");
    thePartStandsInWords();
    theRegionsAreReachedByF6();
    robot.interact(() -> desk.wall().turn(stage));
    look("wall", desk.wall().scene());
    assertThat(desk.wall().fits()).as("the wall's words, stretched by %.1f", stretch).isTrue();
    robot.interact(() -> desk.wall().turn(stage));
    control(KeyCode.ENTER);
    until(() -> session.state().takeRuns());
    control(KeyCode.PERIOD);
    title("view.review");
    look("review");
    assertThat(node("listen-click")).as("nobody played").isNull();
    theNextPlayersSlipIsReachedByF7();
    assertThat(unnamed).as("without a name or a role for screen readers").isEmpty();
    assertThat(english).as("still English in a German window").isEmpty();
    assertThat(clipped)
        .as("cut short at %.0f px, %s, stretched by %.1f", textSize, language, stretch)
        .isEmpty();
  }

  /** The cautions stand where they concern somebody, whole and in sight of whoever scrolls. */
  private void cautions(String... keys) {
    for (String key : keys) {
      String said = words.say(key);
      boolean there =
          on(
              () ->
                  stage.getScene().getRoot().lookupAll(".label").stream()
                      .anyMatch(
                          node ->
                              node.isVisible()
                                  && node instanceof Labeled label
                                  && said.equals(label.getText())));
      assertThat(there).as("%s on %s", key, stage.getTitle()).isTrue();
    }
  }

  /** For readers whom the toolkit does not reach: bar by bar, in the window's language. */
  private void thePartStandsInWords() {
    control(KeyCode.DIGIT7);
    title("view.settings");
    robot.interact(() -> node("part-in-words").requestFocus());
    robot.type(KeyCode.SPACE);
    control(KeyCode.DIGIT2);
    title("view.stand");
    assertThat(on(() -> node("part-words").getParent().isVisible())).isTrue();
    assertThat(text("part-words")).contains("1", "2", "3").hasSizeGreaterThan(100);
    look("stand in words");
    control(KeyCode.DIGIT7);
    title("view.settings");
    robot.interact(() -> node("part-in-words").requestFocus());
    robot.type(KeyCode.SPACE);
    control(KeyCode.DIGIT2);
    title("view.stand");
  }

  /** In one turn of the window's thread each, since this network may have hosts of its own. */
  private void foundHostsComeAndGo() {
    FoundHost one = host("Probenraum", 20);
    FoundHost same = host("Probenraum", 21);
    FoundHost longest = host("M".repeat(63), 22); // as long as a notice may be, and no space in it
    Scene scene = stage.getScene();
    robot.interact(
        () -> {
          desk.found(List.of(longest, one, same));
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          collect("door with hosts", scene.getRoot());
          VBox found = (VBox) scene.lookup("#found");
          assertThat(found.getChildren()).hasSize(3);
          found.getChildren().get(2).requestFocus();
          desk.found(List.of(same));
          assertThat(scene.getFocusOwner()).isEqualTo(found.getChildren().get(0));
          ((Button) found.getChildren().get(0)).fire();
          assertThat(scene.getFocusOwner().getId()).isEqualTo("word");
          assertThat(((TextField) scene.lookup("#address")).getText()).contains("192.168.1.21");
          found.getChildren().get(0).requestFocus();
          desk.found(List.of());
          assertThat(scene.getFocusOwner().getId()).as("its host is gone").isEqualTo("address");
          ((TextField) scene.lookup("#address")).clear();
        });
  }

  private static FoundHost host(String name, int number) {
    return new FoundHost(name, RoomAddress.parse("192.168.1." + number + ":7420"));
  }

  private void thePaperIsTurnedByTheKeyboard() {
    assertThat(style()).as("light as the system has it here").contains(web(Palette.LIGHT));
    control(KeyCode.T);
    assertThat(style()).contains(web(Palette.DARK));
    robot.interact(() -> stage.getScene().lookup("#contrast-strong").requestFocus());
    robot.type(KeyCode.SPACE);
    assertThat(style()).contains(web(Palette.STRONG_DARK));
    robot.interact(() -> stage.getScene().lookup("#contrast-usual").requestFocus());
    robot.type(KeyCode.SPACE);
    control(KeyCode.T);
    assertThat(style()).contains(web(Palette.LIGHT));
    theSizeIsSetOnKeyboardsWithPlusAboveEquals();
  }

  private void theCountInIsChosenByTheKeyboard() {
    assertThat(SoundSettings.file(folder).read().value().countsIn()).isEqualTo(CountIn.CLICKED);
    robot.interact(() -> node("count-in-clicked").requestFocus());
    robot.type(KeyCode.RIGHT);
    assertThat(stage.getScene().getFocusOwner().getId()).isEqualTo("count-in-spoken");
    assertThat(SoundSettings.file(folder).read().value().countsIn())
        .as("remembered at once")
        .isEqualTo(CountIn.SPOKEN);
  }

  /** Ctrl+Plus with Shift where plus needs it, without where it does not; down again with minus. */
  private void theSizeIsSetOnKeyboardsWithPlusAboveEquals() {
    String before = text("size-now");
    control(KeyCode.MINUS);
    assertThat(text("size-now")).isNotEqualTo(before);
    robot.press(KeyCode.CONTROL, KeyCode.SHIFT).type(KeyCode.EQUALS);
    robot.release(KeyCode.SHIFT, KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(text("size-now")).isEqualTo(before);
    assertThat(new SettingsFile(folder).read().settings().look().textSize())
        .as("remembered at once")
        .isEqualTo(Double.parseDouble(before.replaceAll("\\D", "")) * Look.USUAL_TEXT / 100);
  }

  private void theHelpIsTurnedByTheKeyboard() {
    ScrollPane help = (ScrollPane) stage.getScene().lookup("#help");
    robot.type(KeyCode.PAGE_DOWN);
    until(() -> help.getVvalue() > 0);
    assertThat(help.getAccessibleText()).contains("1. ", "2. ", "5. ");
  }

  private void theRegionsAreReachedByF6() {
    robot.type(KeyCode.F6);
    assertThat(stage.getScene().getFocusOwner().getId()).isEqualTo("tab-stand");
    robot.type(KeyCode.F6);
    assertThat(stage.getScene().getFocusOwner().getId()).isNotEqualTo("tab-stand");
  }

  /** Each player at this computer reads and keeps their own slip, the window's player first. */
  private void theNextPlayersSlipIsReachedByF7() throws Exception {
    until(() -> session.further().get(0).state().review() != null);
    assertThat(text("review-of-0")).isEqualTo("Ana");
    assertThat(((ToggleButton) node("review-of-0")).isSelected()).isTrue();
    robot.type(KeyCode.F7);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(((ToggleButton) node("review-of-1")).isSelected()).isTrue();
    assertThat(text("review-head")).startsWith("Ben: ");
    look("review of another");
    robot.interact(() -> ((Button) node("save-pdf")).fire());
    Path kept;
    try (Stream<Path> files = Files.list(folder.resolve("reviews"))) {
      kept = files.filter(file -> file.toString().contains("-ben")).findFirst().orElseThrow();
    }
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(kept))) {
      assertThat(new PDFTextStripper().getText(document))
          .contains("Ben")
          .doesNotContainPattern("\\bAna\\b");
    }
    robot.press(KeyCode.SHIFT).type(KeyCode.F7).release(KeyCode.SHIFT);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(text("review-head")).startsWith("Ana: ");
    robot.interact(() -> node("review-of-0").requestFocus());
    robot.type(KeyCode.RIGHT).type(KeyCode.SPACE);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(text("review-head")).startsWith("Ben: ");
    assertThat(stage.getScene().getFocusOwner()).isEqualTo(node("review-of-1"));
  }

  private String style() {
    WaitForAsyncUtils.waitForFxEvents();
    String sheet = stage.getScene().getStylesheets().get(1);
    byte[] css = Base64.getDecoder().decode(sheet.substring(sheet.indexOf(',') + 1));
    return new String(css, StandardCharsets.UTF_8);
  }

  private static String web(Palette palette) {
    return "-tc-ink: " + Palette.web(palette.ink());
  }

  private void look(String page) {
    look(page, stage.getScene());
  }

  private void look(String page, Scene scene) {
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(
        () -> {
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          collect(page, scene.getRoot());
          if (words.language().equals(Locale.GERMAN)) {
            EnglishLeft.under(scene.getRoot()).forEach(left -> english.add(page + ": " + left));
          }
        });
  }

  private void collect(String page, Parent parent) {
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (!node.isVisible()) {
        continue;
      }
      if (node instanceof Labeled labeled && !(node instanceof ListCell)) {
        for (Node inside : labeled.getChildrenUnmodifiable()) {
          if (inside instanceof Text text && !text.getText().equals(labeled.getText())) {
            clipped.add(page + ": \"" + text.getText() + "\" of \"" + labeled.getText() + "\"");
          }
        }
      }
      if (node instanceof TextField field && !promptFits(field)) {
        clipped.add(page + ": the example \"" + field.getPromptText() + "\"");
      }
      if (node.isFocusTraversable() && (node.getAccessibleRole() == null || name(node).isBlank())) {
        unnamed.add(page + ": " + node);
      }
      if (node.getStyleClass().contains(WideTable.STYLE)) {
        assertThat(node.localToScene(node.getLayoutBounds()).getMaxX())
            .isLessThanOrEqualTo(node.getScene().getWidth());
        continue; // moved sideways by itself; its words are whole all the same
      }
      double right = node.localToScene(node.getLayoutBounds()).getMaxX();
      if (node instanceof Labeled labeled
          && labeled.getText() != null
          && !labeled.getText().isEmpty()
          && right > node.getScene().getWidth() + 1) {
        clipped.add(page + ": \"" + labeled.getText() + "\" beyond the edge");
      }
      if (node instanceof Parent deeper) {
        collect(page, deeper);
      }
    }
  }

  private static boolean promptFits(TextField field) {
    Text prompt = new Text(field.getPromptText());
    prompt.setFont(field.getFont());
    double room = field.getWidth() - field.getInsets().getLeft() - field.getInsets().getRight();
    return prompt.getLayoutBounds().getWidth() <= room;
  }

  private static String name(Node node) {
    if (node.getAccessibleText() != null) {
      return node.getAccessibleText();
    }
    return node instanceof Labeled labeled && labeled.getText() != null ? labeled.getText() : "";
  }

  /** Every sentence longer by a share of itself, with its blanks left alone. */
  private static final class Stretched extends ResourceBundle {
    private final ResourceBundle english = ResourceBundle.getBundle(BUNDLE, Locale.ROOT);
    private final double stretch;

    Stretched(double stretch) {
      this.stretch = stretch;
    }

    @Override
    protected Object handleGetObject(String key) {
      String said = english.getString(key);
      int more = (int) Math.round(said.replaceAll("\\{[^}]*\\}", "").length() * (stretch - 1));
      return said + "o".repeat(Math.max(0, more)).replaceAll("(.{6})", "$1 ").stripTrailing();
    }

    @Override
    public Enumeration<String> getKeys() {
      return english.getKeys();
    }
  }
}

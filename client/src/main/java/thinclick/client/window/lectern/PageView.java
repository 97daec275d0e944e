package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.stand.DevicePixels;
import thinclick.client.window.stand.MarkPainter;
import thinclick.client.window.stand.SpokenLine;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.engraving.SystemPlan;
import thinclick.server.material.PartWriter;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.Speaker;

/** The page as it is dealt, or would be dealt now: for each chair its line of music. */
final class PageView {
  private static final double USUAL_SPACE = 7;
  private static final double LEAST_SPACE = 5;
  private static final int MOST_LINES = 2;

  private final Words words;
  private final VBox root = new VBox(4);
  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private DevicePixels pixels = DevicePixels.primary();
  private @Nullable Shown shown;

  /** What the painted page was made of. */
  private record Shown(
      Hand hand,
      List<String> names,
      double width,
      Palette palette,
      double scale,
      DevicePixels pixels) {}

  /**
   * What of a part stands here.
   *
   * @param narrowest staff spaces that its fullest line takes
   */
  private record Lines(StaffPart part, List<SystemPlan> plans, double narrowest) {}

  PageView(Words words) {
    this.words = words;
    root.setId("page");
    root.setMinWidth(0);
    root.widthProperty().addListener(any -> again());
    DevicePixels.follow(root, this::on);
  }

  private void on(DevicePixels now) {
    pixels = now;
    again();
  }

  VBox root() {
    return root;
  }

  void dress(Palette wanted, double textScale) {
    palette = wanted;
    scale = textScale;
    again();
  }

  private void again() {
    Shown before = shown;
    if (before != null) {
      show(before.hand(), before.names());
    }
  }

  /**
   * Shows what a hand gives.
   *
   * @param names of the players, in the order of its chairs; none: a chair for each of the drill's
   */
  void show(@Nullable Hand hand, List<String> names) {
    if (hand == null) {
      shown = null;
      root.getChildren().clear();
      return;
    }
    Shown now = new Shown(hand, names, root.getWidth(), palette, scale, pixels);
    if (now.equals(shown)) {
      return;
    }
    shown = now;
    root.getChildren().clear();
    if (root.getWidth() < 100) {
      return;
    }
    try {
      root.getChildren().setAll(lines(hand, names));
    } catch (BadInput undealt) {
      Label says =
          styled(
              new Label(Words.sentence(words.say("lectern.page.not", words.say(undealt)))), "soft");
      says.setWrapText(true);
      root.getChildren().setAll(says);
    }
  }

  private List<Node> lines(Hand hand, List<String> names) {
    Drill drill = hand.drill();
    List<String> players = new ArrayList<>(names);
    for (int i = 0; players.isEmpty() || (names.isEmpty() && i < drill.chairs().size()); i++) {
      players.add(words.say("lectern.fill.number", i + 1));
    }
    Map<String, Integer> levels = new HashMap<>();
    for (int i = 0; i < names.size() && i < hand.chairs().size(); i++) {
      Integer level = hand.levels().get(hand.chairs().get(i));
      if (level != null) {
        levels.put(names.get(i), level);
      }
    }
    Dealing dealing =
        Dealer.dealFitted(drill, players, hand.seed(), hand.tempo(), drill.stages(), levels);
    List<String> sentences = dealing.sentences(Speaker.of(words.language()));
    List<Lines> parts = new ArrayList<>();
    for (int i = 0; i < sentences.size(); i++) {
      WrittenPart part =
          PartWriter.write(
                  dealing.dealt(), dealing.dealt().chairs().get(i), hand.tempo(), sentences.get(i))
              .in(words.language());
      parts.add(lines(part));
    }
    // all staves of one size: the one that the fullest line leaves
    double room =
        parts.stream()
            .mapToDouble(each -> root.getWidth() / each.narrowest())
            .min()
            .orElse(USUAL_SPACE);
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < sentences.size(); i++) {
      nodes.add(Prose.of(inOnePiece(sentences.get(i), players)));
      nodes.addAll(music(parts.get(i), Math.min(USUAL_SPACE * scale, room)));
    }
    return nodes;
  }

  /** No line ends within a name. */
  private static String inOnePiece(String says, List<String> names) {
    String kept = says;
    for (String name : names) {
      kept = kept.replace(name, name.replace(' ', '\u00a0'));
    }
    return kept;
  }

  /** The first lines of a part. */
  private Lines lines(WrittenPart part) {
    int bars = Reading.barsPerSystem(part);
    Reading reading = Reading.once(part, bars, Cut.HALF_BARS);
    while (bars > 1
        && Engraver.narrowest(reading.part(), reading.plans()) * LEAST_SPACE * scale
            > root.getWidth()) {
      bars = (bars + 1) / 2;
      reading = Reading.once(part, bars, Cut.HALF_BARS);
    }
    List<SystemPlan> plans =
        reading.plans().subList(0, Math.min(MOST_LINES, reading.plans().size()));
    return new Lines(reading.part(), plans, Engraver.narrowest(reading.part(), plans));
  }

  private List<Node> music(Lines lines, double space) {
    List<Node> nodes = new ArrayList<>();
    for (StaffSystem system :
        Engraver.systems(lines.part(), lines.plans(), (root.getWidth() - 2) / space)) {
      Canvas canvas =
          new Canvas(Math.ceil(system.width() * space) + 1, Math.ceil(system.height() * space) + 2);
      new MarkPainter(canvas.getGraphicsContext2D(), palette, space, pixels).draw(system.marks());
      canvas.setAccessibleRole(AccessibleRole.TEXT);
      canvas.setAccessibleText(SpokenLine.of(system, lines.part().said()));
      nodes.add(canvas);
    }
    return nodes;
  }
}

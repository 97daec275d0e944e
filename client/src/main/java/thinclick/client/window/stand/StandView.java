package thinclick.client.window.stand;

import java.util.Objects;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.engraving.ReaderWords;
import thinclick.server.material.WrittenPart;

/** The player's page: the score sheet, with the count above it. */
public final class StandView {
  private static final int SETTLING_BARS = 2;
  private static final double WORDS_SHARE = 0.28;

  private final StandModel model;
  private final Words words;
  private final ScoreSheet sheet = new ScoreSheet();
  private final Label title = styled(new Label(), "heading");
  private final Label reader = styled(new Label(), "soft");
  private final Label says = new Label();
  private final Label count = styled(new Label(), "count");
  private final Label countdown = styled(new Label(), "soft");
  private final Label empty = styled(new Label(), "empty-sheet");
  private final Label legend = styled(new Label(), "soft");
  private final Label spoken = new Label();
  private final ScrollPane partInWords = new ScrollPane(spoken);
  private final BorderPane root = new BorderPane();

  private @Nullable String shownDeal;
  private @Nullable WrittenPart written;
  private @Nullable ClickPlan shownPlan;
  private String shownTake = "";
  private int shownBars;

  public StandView(StandModel model, Words words) {
    this.model = model;
    this.words = words;
    createView();
    model.roomProperty().addListener((any, old, now) -> show(now));
    model.momentProperty().addListener((any, old, now) -> show(now));
    model.barsOverProperty().addListener((any, old, now) -> showBars(now.intValue()));
    show(model.roomProperty().get());
    show(TakeMoment.NONE);
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Takes the focus, so that no control keeps it during a take. */
  public void begin() {
    root.requestFocus();
  }

  /**
   * Paints again in other colours or another size.
   *
   * @param inWords whether the part stands below the music in words
   */
  public void dress(Palette palette, double textScale, boolean inWords) {
    sheet.dress(palette, textScale);
    partInWords.setVisible(inWords);
  }

  private void createView() {
    root.getStyleClass().addAll("page", "stand");
    root.setFocusTraversable(true);
    root.setAccessibleRole(AccessibleRole.TEXT);
    root.accessibleTextProperty()
        .bind(
            Bindings.concat(
                title.textProperty(),
                ". ",
                says.textProperty(),
                " ",
                empty.textProperty(),
                " ",
                spoken.textProperty()));
    title.setId("stand-title");
    says.setId("stand-says");
    reader.setId("stand-reader");
    reader.setWrapText(true);
    title.setWrapText(true);
    says.setWrapText(true);
    count.setId("count");
    countdown.setId("countdown");
    VBox left = new VBox(2, title, reader, says);
    HBox.setHgrow(left, Priority.ALWAYS);
    VBox right = new VBox(0, count, countdown);
    right.setAlignment(Pos.TOP_RIGHT);
    right.setMinWidth(Region.USE_PREF_SIZE);
    HBox top = styled(new HBox(24, left, right), "stand-top");
    top.setMinHeight(104);
    legend.setWrapText(true);
    legend.managedProperty().bind(legend.visibleProperty());
    legend.setText(words.say("stand.legend"));
    StackPane middle = styled(new StackPane(sheet.root(), empty), "sheet");
    root.setTop(top);
    root.setCenter(middle);
    spoken.setId("part-words");
    spoken.setWrapText(true);
    partInWords.setFitToWidth(true);
    partInWords.setVisible(false);
    partInWords.managedProperty().bind(partInWords.visibleProperty());
    partInWords.maxHeightProperty().bind(root.heightProperty().multiply(WORDS_SHARE));
    root.setBottom(styled(new VBox(8, partInWords, legend), "stand-bottom"));
  }

  private void show(RoomState room) {
    Dealt dealt = room.dealt();
    String deal = dealt == null ? null : dealt.dealId();
    if (!Objects.equals(deal, shownDeal)) {
      shownDeal = deal;
      shownPlan = room.plan();
      written = dealt == null ? null : DealtPart.written(dealt, room.ownPart());
      sheet.show(written, OtherLine.of(dealt));
    } else if (dealt != null && !Objects.equals(room.plan(), shownPlan)) {
      shownPlan = room.plan();
      written = DealtPart.written(dealt, room.ownPart());
      sheet.replan(written);
    }
    String take = room.announced() == null ? "" : room.announced().takeId();
    if (!take.equals(shownTake)) {
      shownTake = take;
      shownBars = 0;
      sheet.clearMarks();
    }
    boolean nothing = dealt == null;
    empty.setVisible(nothing);
    String why = words.say(room.leader() ? "stand.empty.leader" : "stand.empty");
    empty.setText(nothing ? why : "");
    legend.setVisible(!nothing && !room.takeRuns());
    title.setText(
        dealt == null
            ? ""
            : words.say(
                "stand.title", dealt.title(), dealt.meter().toString(), Math.round(dealt.tempo())));
    WrittenPart now = written;
    reader.setText(now == null || room.ownPart() == null ? "" : ReaderWords.of(now));
    reader.setManaged(!reader.getText().isEmpty());
    says.setText(model.ownSays());
    spoken.setText(now == null ? "" : SpokenLine.of(now));
  }

  private void show(TakeMoment moment) {
    sheet.bar(moment.part() == TakeMoment.Part.PLAYING ? moment.bar() : -1);
    switch (moment.part()) {
      case NONE, OVER -> tell("", "");
      case BEFORE -> tell("", words.say("stand.before", moment.secondsToCountIn()));
      case COUNT_IN -> tell(Integer.toString(moment.count()), words.say("stand.countIn"));
      case PLAYING ->
          tell(
              words.say("stand.bar", moment.bar() + 1),
              moment.barsToNextStage() == 0
                  ? words.say("stand.last")
                  : words.say("stand.changes", moment.barsToNextStage()));
    }
  }

  private void tell(String large, String small) {
    boolean counting = large.length() == 1;
    if (counting != count.getStyleClass().contains("count-in")) {
      count.getStyleClass().setAll("label", counting ? "count-in" : "count");
    }
    count.setText(large);
    countdown.setText(small);
  }

  private void showBars(int over) {
    if (over > shownBars) {
      model.hear(over - 1);
      // What came later may settle what was played before, and what others played arrives late.
      for (int bar = Math.max(0, shownBars - SETTLING_BARS); bar < over; bar++) {
        sheet.marks(bar, model.marks(bar));
        sheet.heard(bar, model.others(bar));
      }
    }
    shownBars = over;
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}

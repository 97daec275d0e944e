package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.engraving.ReaderWords;
import thinclick.server.material.WrittenPart;

/**
 * The part of one chair, or of several that read the same line: who reads it, its sentence, the
 * score with each reader's marks.
 */
final class PartSheet {
  private static final int SETTLING_BARS = 2;
  private static final double NAME_EMS = 5;
  private static final double GAP = 10;

  private final StandModel model;
  private final Locale language;
  private final ScoreSheet sheet;
  private final List<Lane> lanes = new ArrayList<>();
  private final Label name = new Label();
  private final Label reader = new Label();
  private final Label says = new Label();
  private final HBox root = new HBox(GAP);
  private final ChangeListener<RoomState> onRoom = (any, old, now) -> show(now);
  private final ChangeListener<TakeMoment> onMoment = (any, old, now) -> show(now);

  private final BooleanProperty brief = new SimpleBooleanProperty(false);

  private @Nullable String shownDeal;
  private @Nullable WrittenPart written;
  private @Nullable ClickPlan shownPlan;
  private boolean alone = true;

  /**
   * @param readers one, or several who were dealt the same line
   * @param first true for the first part of a page, above which the click stands
   * @param language of the words on the page
   */
  PartSheet(List<StandView.Reader> readers, boolean first, Locale language) {
    this.model = readers.get(0).model();
    this.language = language;
    sheet = new ScoreSheet(readers.stream().map(StandView.Reader::name).toList(), first);
    name.setText(readers.stream().map(StandView.Reader::name).collect(Collectors.joining("\n")));
    name.getStyleClass().add("strong");
    name.setWrapText(true);
    reader.getStyleClass().add("soft");
    reader.setWrapText(true);
    says.setWrapText(true);
    for (Label line : List.of(reader, says)) {
      line.visibleProperty().bind(brief.not());
      line.managedProperty().bind(line.textProperty().isNotEmpty().and(brief.not()));
    }
    root.setAlignment(Pos.CENTER_LEFT);
    root.setMinHeight(0);
    model.roomProperty().addListener(onRoom);
    model.momentProperty().addListener(onMoment);
    show(model.roomProperty().get());
    show(model.momentProperty().get());
    for (StandView.Reader one : readers) {
      lanes.add(new Lane(lanes.size(), one.model()));
    }
  }

  /** Nobody reads it any more. */
  void close() {
    model.roomProperty().removeListener(onRoom);
    model.momentProperty().removeListener(onMoment);
    lanes.forEach(Lane::close);
  }

  /** The score, filling the page, with its words elsewhere. */
  Node alone(Pane words) {
    words.getChildren().addAll(reader, says);
    takeOthers(true);
    return sheet.root();
  }

  /** What the names take of a page's width, pixels. */
  static double besideMusic(double textScale) {
    return NAME_EMS * Look.USUAL_TEXT * textScale + GAP;
  }

  /**
   * The score as one of several, its players' names in the margin as in a printed score.
   *
   * @param textScale how large text is, 1 is usual
   * @param leastHeight what it needs, pixels; what is left over is shared by all
   */
  Node amongOthers(double textScale, double leastHeight) {
    takeOthers(false);
    double wide = besideMusic(textScale) - GAP;
    name.setMinWidth(wide);
    name.setMaxWidth(wide);
    HBox.setHgrow(sheet.root(), Priority.ALWAYS);
    root.getChildren().setAll(name, sheet.root());
    root.setPrefHeight(leastHeight);
    VBox.setVgrow(root, Priority.ALWAYS);
    return root;
  }

  private void takeOthers(boolean only) {
    if (only != alone) {
      alone = only;
      sheet.beside(others(model.roomProperty().get().dealt()));
    }
  }

  /** Where several parts stand on the page, each has its own line already. */
  private List<OtherLine> others(@Nullable Dealt dealt) {
    return alone ? OtherLine.of(dealt) : List.of();
  }

  void dress(Palette palette, double textScale) {
    sheet.dress(palette, textScale);
  }

  /** Without its words, where the page has no room for them and for music that can be read. */
  void brief(boolean now) {
    brief.set(now);
  }

  /** The score's marks, for those who look at them. */
  ScoreSheet sheet() {
    return sheet;
  }

  /** The part in words; empty where nothing is dealt. */
  String spoken() {
    return written == null ? "" : SpokenLine.of(written);
  }

  /** The part's sentence. */
  String says() {
    return says.getText();
  }

  private void show(RoomState room) {
    Dealt dealt = room.dealt();
    String deal = dealt == null ? null : dealt.dealId();
    if (!Objects.equals(deal, shownDeal)) {
      shownDeal = deal;
      shownPlan = room.plan();
      written = model.written(language);
      sheet.show(written, others(dealt));
    } else if (dealt != null && !Objects.equals(room.plan(), shownPlan)) {
      shownPlan = room.plan();
      WrittenPart now = model.written(language);
      written = now;
      if (now != null) {
        sheet.replan(now);
      }
    }
    WrittenPart now = written;
    reader.setText(now == null || room.ownPart() == null ? "" : ReaderWords.of(now));
    says.setText(model.ownSays());
  }

  private void show(TakeMoment moment) {
    sheet.bar(moment.part() == TakeMoment.Part.PLAYING ? moment.bar() : -1);
  }

  /** A reader's marks, which come when a bar is over and go when another take begins. */
  private final class Lane {
    private final int lane;
    private final StandModel player;
    private final ChangeListener<RoomState> onRoom = (any, old, now) -> begin(now);
    private final ChangeListener<Number> onBars = (any, old, now) -> showBars(now.intValue());
    private String shownTake = "";
    private int shownBars;

    Lane(int lane, StandModel player) {
      this.lane = lane;
      this.player = player;
      player.roomProperty().addListener(onRoom);
      player.barsOverProperty().addListener(onBars);
      begin(player.roomProperty().get());
      showBars(player.barsOverProperty().get());
    }

    private void close() {
      player.roomProperty().removeListener(onRoom);
      player.barsOverProperty().removeListener(onBars);
    }

    private void begin(RoomState room) {
      String take = room.announced() == null ? "" : room.announced().takeId();
      if (!take.equals(shownTake)) {
        shownTake = take;
        shownBars = 0;
        sheet.clearMarks(lane);
      }
    }

    private void showBars(int over) {
      if (over > shownBars) {
        player.hear(over - 1);
        // What came later may settle what was played before, and what others played arrives late.
        for (int bar = Math.max(0, shownBars - SETTLING_BARS); bar < over; bar++) {
          sheet.marks(lane, bar, player.marks(bar));
          if (lane == 0) {
            sheet.heard(bar, player.others(bar));
          }
        }
      }
      shownBars = over;
    }
  }
}

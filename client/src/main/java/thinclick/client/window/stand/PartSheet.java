package thinclick.client.window.stand;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.engraving.ReaderWords;
import thinclick.server.material.WrittenPart;

/** The part of one chair: who reads it, its sentence, the score with its marks. */
final class PartSheet {
  private static final int SETTLING_BARS = 2;
  private static final double NAME_EMS = 5;

  private final StandModel model;
  private final Locale language;
  private final ScoreSheet sheet = new ScoreSheet();
  private final Label name = new Label();
  private final Label reader = new Label();
  private final Label says = new Label();
  private final HBox root = new HBox(10);
  private final ChangeListener<RoomState> onRoom = (any, old, now) -> show(now);
  private final ChangeListener<TakeMoment> onMoment = (any, old, now) -> show(now);
  private final ChangeListener<Number> onBars = (any, old, now) -> showBars(now.intValue());

  private @Nullable String shownDeal;
  private @Nullable WrittenPart written;
  private @Nullable ClickPlan shownPlan;
  private boolean alone = true;
  private String shownTake = "";
  private int shownBars;

  /**
   * @param whose the player's name, said where several parts stand on the page
   * @param language of the words on the page
   */
  PartSheet(StandModel model, String whose, Locale language) {
    this.model = model;
    this.language = language;
    name.setText(whose);
    name.getStyleClass().add("strong");
    reader.getStyleClass().add("soft");
    reader.setWrapText(true);
    says.setWrapText(true);
    reader.managedProperty().bind(reader.textProperty().isNotEmpty());
    says.managedProperty().bind(says.textProperty().isNotEmpty());
    root.setAlignment(Pos.CENTER_LEFT);
    root.setMinHeight(0);
    root.setPrefHeight(0); // all parts are equally high
    model.roomProperty().addListener(onRoom);
    model.momentProperty().addListener(onMoment);
    model.barsOverProperty().addListener(onBars);
    show(model.roomProperty().get());
    show(model.momentProperty().get());
    showBars(model.barsOverProperty().get());
  }

  /** Nobody reads it any more. */
  void close() {
    model.roomProperty().removeListener(onRoom);
    model.momentProperty().removeListener(onMoment);
    model.barsOverProperty().removeListener(onBars);
  }

  /** The score, filling the page, with its words elsewhere. */
  Node alone(Pane words) {
    words.getChildren().addAll(reader, says);
    takeOthers(true);
    return sheet.root();
  }

  /** The score as one of several, its player's name in the margin as in a printed score. */
  Node amongOthers() {
    takeOthers(false);
    name.setMinWidth(NAME_EMS * name.getFont().getSize());
    HBox.setHgrow(sheet.root(), Priority.ALWAYS);
    root.getChildren().setAll(name, sheet.root());
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
      written = dealt == null ? null : DealtPart.written(dealt, room.ownPart()).in(language);
      sheet.show(written, others(dealt));
    } else if (dealt != null && !Objects.equals(room.plan(), shownPlan)) {
      shownPlan = room.plan();
      written = DealtPart.written(dealt, room.ownPart()).in(language);
      sheet.replan(written);
    }
    String take = room.announced() == null ? "" : room.announced().takeId();
    if (!take.equals(shownTake)) {
      shownTake = take;
      shownBars = 0;
      sheet.clearMarks();
    }
    WrittenPart now = written;
    reader.setText(now == null || room.ownPart() == null ? "" : ReaderWords.of(now));
    says.setText(model.ownSays());
  }

  private void show(TakeMoment moment) {
    sheet.bar(moment.part() == TakeMoment.Part.PLAYING ? moment.bar() : -1);
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
}

package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.material.WrittenPart;

/**
 * The parts that are in view together: the score of those who read them, with each reader's marks;
 * several who were dealt the same line read it from one staff.
 */
final class PartSheet {
  private static final int SETTLING_BARS = 2;

  /** What others played arrives late, and what they dropped is known once they play again. */
  private static final int HEARING_BARS = 8;

  private final Words words;
  private final ScoreSheet sheet;
  private final StandModel first;
  private final boolean alone;
  private final List<StandModel> here;
  private final List<Staff> staves = new ArrayList<>();
  private final List<Lane> lanes = new ArrayList<>();
  private Runnable onWritten = () -> {};
  private final ChangeListener<TakeMoment> onMoment = (any, old, now) -> show(now);

  /**
   * @param lines from above, each read by one or several
   * @param alone whether lines for the other players stand below the part
   * @param here all who play at this computer
   * @param fitted what is known of how large their music is
   */
  PartSheet(
      List<List<StandView.Reader>> lines,
      boolean alone,
      List<StandModel> here,
      FittedPages fitted,
      Words words) {
    this.here = List.copyOf(here);
    this.words = words;
    this.alone = alone;
    first = lines.get(0).get(0).model();
    sheet =
        new ScoreSheet(
            lines.stream().map(line -> line.stream().map(StandView.Reader::name).toList()).toList(),
            fitted,
            words);
    for (List<StandView.Reader> line : lines) {
      int staff = staves.size();
      staves.add(new Staff(staff, line.get(0).model()));
      for (int lane = 0; lane < line.size(); lane++) {
        lanes.add(new Lane(staff, lane, line.get(lane).model()));
      }
    }
    first.momentProperty().addListener(onMoment);
    show(first.momentProperty().get());
  }

  /** Nobody reads it any more. */
  void close() {
    first.momentProperty().removeListener(onMoment);
    staves.forEach(Staff::close);
    lanes.forEach(Lane::close);
  }

  /** Who is told when another part is written here, or the same under another click plan. */
  void onWritten(Runnable told) {
    onWritten = told;
  }

  /** The score. */
  Node root() {
    return sheet.root();
  }

  void dress(Palette palette, double textScale) {
    sheet.dress(palette, textScale);
  }

  /**
   * Pages that are turned to from this one.
   *
   * @param score where a part stands alone, the pages on which all stand
   */
  void beside(List<Beside> pages, List<Beside> score) {
    sheet.beside(pages, score);
  }

  /** Whether lines for players elsewhere belong below the part. */
  boolean withOthers() {
    return alone && !OtherLine.of(first.roomProperty().get().dealt()).isEmpty();
  }

  /** A staff space, pixels; 0 where nothing is dealt. */
  ReadOnlyDoubleProperty spaceProperty() {
    return sheet.spaceProperty();
  }

  /** Turns over so many pages, where no take runs. */
  void leaf(int by) {
    sheet.leaf(by);
  }

  /** Which page is in view. */
  ReadOnlyObjectProperty<Leaf> leafProperty() {
    return sheet.leafProperty();
  }

  /** The parts in words; empty where nothing is dealt. */
  String spoken() {
    return staves.stream()
        .filter(staff -> staff.written != null)
        .map(staff -> (whose(staff) + "\n" + staff.model.spoken(words.language())).strip())
        .collect(Collectors.joining("\n"));
  }

  /** The sentence that was dealt with a part; of several, whose each is. */
  private String whose(Staff staff) {
    Part own = staff.model.roomProperty().get().ownPart();
    return staves.size() < 2 || own == null
        ? staff.says()
        : words.say("stand.whose", own.player(), staff.says());
  }

  /** The first part's entry in a few words. */
  String entry(StandWords words) {
    return words.entry(first);
  }

  /** The bar in which the first part begins, from 0. */
  int entryBar() {
    RoomState room = first.roomProperty().get();
    return StandWords.entryBar(room.dealt(), room.ownPart());
  }

  private void show(TakeMoment moment) {
    switch (moment.part()) {
      case NONE, OVER -> sheet.rest();
      case BEFORE, COUNT_IN -> sheet.bar(-1);
      case PLAYING -> sheet.bar(moment.bar());
    }
  }

  /** What is written on a staff, dealt anew or under another click plan. */
  private final class Staff {
    private final int number;
    private final StandModel model;
    private final ChangeListener<RoomState> onRoom = (any, old, now) -> show(now);
    private @Nullable String shownDeal;
    private @Nullable ClickPlan shownPlan;
    private @Nullable WrittenPart written;

    Staff(int number, StandModel model) {
      this.number = number;
      this.model = model;
      model.roomProperty().addListener(onRoom);
      show(model.roomProperty().get());
    }

    private void close() {
      model.roomProperty().removeListener(onRoom);
    }

    private String says() {
      return model.ownSays();
    }

    private void show(RoomState room) {
      Dealt dealt = room.dealt();
      String deal = dealt == null ? null : dealt.dealId();
      if (!Objects.equals(deal, shownDeal)) {
        shownDeal = deal;
        shownPlan = room.plan();
        written = model.written(words.language());
        sheet.show(number, written, alone ? OtherLine.of(dealt) : List.of());
        onWritten.run();
      } else if (dealt != null && !Objects.equals(room.plan(), shownPlan)) {
        shownPlan = room.plan();
        WrittenPart now = model.written(words.language());
        if (now != null) {
          written = now;
          sheet.replan(number, now);
          onWritten.run();
        }
      }
    }
  }

  /** A reader's marks, which come when a bar is over and go when another take begins. */
  private final class Lane {
    private final int staff;
    private final int lane;
    private final StandModel player;
    private final ChangeListener<RoomState> onRoom = (any, old, now) -> begin(now);
    private final ChangeListener<Number> onBars = (any, old, now) -> showBars(now.intValue());
    private String shownTake = "";
    private int shownBars;

    Lane(int staff, int lane, StandModel player) {
      this.staff = staff;
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
        sheet.clearMarks(staff, lane);
      }
    }

    private void showBars(int over) {
      if (over > shownBars) {
        player.hear(over - 1);
        // What came later may settle what was played before.
        for (int bar = Math.max(0, shownBars - SETTLING_BARS); bar < over; bar++) {
          sheet.marks(staff, lane, bar, player.marks(bar));
        }
        int from = Math.max(0, shownBars - HEARING_BARS);
        for (int bar = from; staff == 0 && lane == 0 && bar < over; bar++) {
          sheet.heard(bar, player.others(bar, here));
        }
      }
      shownBars = over;
    }
  }
}

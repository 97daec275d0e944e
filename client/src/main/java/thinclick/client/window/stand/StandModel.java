package thinclick.client.window.stand;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javafx.beans.InvalidationListener;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.RoomLink;
import thinclick.client.window.session.BandMarks;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.session.BarMarks;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Seat;
import thinclick.client.window.session.TakeMoment;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.WrittenPart;

/** What the player's page shows: the part, where the take stands, which bars are over. */
public final class StandModel {
  private static final double MOST_PLAIN_SHARE = 0.5;

  private final Seat seat;
  private final MonotonicClock clock;
  private final ReadOnlyObjectWrapper<TakeMoment> moment =
      new ReadOnlyObjectWrapper<>(TakeMoment.NONE);
  private final ReadOnlyIntegerWrapper barsOver = new ReadOnlyIntegerWrapper(0);

  private final InvalidationListener changed = any -> look();
  private @Nullable Read read;
  private @Nullable Aloud aloud;
  private @Nullable BandMarks band;
  private String bandTake = "";

  /** A part as it was written last, and of what. */
  private record Read(
      String dealId, @Nullable ClickPlan plan, Locale language, WrittenPart written) {}

  /** A part as it was said last. */
  private record Aloud(WrittenPart written, String said) {}

  public StandModel(Seat seat, MonotonicClock clock) {
    this.seat = seat;
    this.clock = clock;
    seat.stateProperty().addListener(changed);
  }

  /** Nobody reads it any more. */
  public void close() {
    seat.stateProperty().removeListener(changed);
  }

  /** Where the take stands. */
  public ReadOnlyObjectProperty<TakeMoment> momentProperty() {
    return moment.getReadOnlyProperty();
  }

  /** How many bars of the take are over, so that their marks can be shown. */
  public ReadOnlyIntegerProperty barsOverProperty() {
    return barsOver.getReadOnlyProperty();
  }

  /** Looks at the clock. */
  public void look() {
    RoomState room = seat.state();
    StepGrid grid = room.grid();
    ClickPlan plan = room.plan();
    RoomLink link = seat.link();
    if (grid == null || plan == null || link == null || room.announced() == null) {
      moment.set(TakeMoment.NONE);
      barsOver.set(0);
      return;
    }
    long now = link.roomMicros(clock.nanos());
    if (room.stopped() != null) {
      now = Math.min(now, room.stopped().atMicros());
    }
    moment.set(
        room.stopped() == null
            ? TakeMoment.at(grid, plan, room.announced(), now)
            : TakeMoment.NONE);
    double bars = (now - grid.startMicros()) / (grid.beatMicros() * grid.meter().beatsPerBar());
    int over = (int) Math.max(0, Math.min(plan.bars(), Math.floor(bars)));
    if (over > 0 && over < plan.bars() && now < BarMarks.overMicros(grid, over - 1)) {
      over--;
    }
    barsOver.set(over);
  }

  /** Takes in what was played by the end of a bar. */
  void hear(int bar) {
    RoomState room = seat.state();
    String takeId = seat.take().takeId();
    if (band == null || !takeId.equals(bandTake)) {
      band = BandMarks.of(room);
      bandTake = takeId;
    }
    if (band != null) {
      band.hear(room, seat.take(), bar);
    }
  }

  /** The marks of a bar that is over. */
  List<BarMark> marks(int bar) {
    RoomState room = seat.state();
    BandMarks heard = band;
    return heard == null || room.ownPart() == null
        ? List.of()
        : heard.of(seat.take(), bar, plainMillis(room));
  }

  /**
   * What the others were heard to play in a bar, by their names.
   *
   * @param here who else plays at this computer: nothing of theirs can still be on its way
   */
  Map<String, List<BarMark>> others(int bar, List<StandModel> here) {
    BandMarks heard = band;
    if (heard == null) {
      return Map.of();
    }
    Map<String, List<BarMark>> all = new HashMap<>(heard.others(seat.state(), seat.take(), bar));
    for (StandModel near : here) {
      Part part = near.seat.state().ownPart();
      if (near != this && part != null) {
        near.hear(bar);
        all.put(part.player(), near.marks(bar).stream().map(BarMark::plain).toList());
      }
    }
    return all;
  }

  /** What is within the chair's uncertainty is neither early nor late. */
  private static double plainMillis(RoomState room) {
    double tolerance = room.dealt() == null ? 0 : room.dealt().toleranceMillis();
    double uncertain = Math.min(room.uncertaintyMillis(), tolerance * MOST_PLAIN_SHARE);
    return Math.max(BarMarks.PLAIN_MILLIS, uncertain);
  }

  /** The part as it is read, its words in a language; null where nothing is dealt. */
  @Nullable WrittenPart written(Locale language) {
    RoomState room = seat.state();
    Dealt dealt = room.dealt();
    if (dealt == null) {
      return null;
    }
    Read before = read;
    if (before == null
        || !before.dealId().equals(dealt.dealId())
        || !Objects.equals(before.plan(), room.plan())
        || !before.language().equals(language)) {
      WrittenPart written = DealtPart.written(dealt, room.ownPart()).in(language);
      before = new Read(dealt.dealId(), room.plan(), language, written);
      read = before;
    }
    return before.written();
  }

  /** The part bar by bar in words; empty where nothing is dealt. */
  String spoken(Locale language) {
    WrittenPart now = written(language);
    if (now == null) {
      return "";
    }
    Aloud before = aloud;
    if (before == null || !before.written().equals(now)) {
      before = new Aloud(now, SpokenLine.of(now));
      aloud = before;
    }
    return before.said();
  }

  /** The sentence that was dealt with this player's part; empty where there is none. */
  public String ownSays() {
    RoomState room = seat.state();
    Part own = room.ownPart();
    if (own == null || room.dealt() == null) {
      return "";
    }
    int index = room.dealt().parts().indexOf(own);
    List<String> says = room.dealt().says();
    return index >= 0 && index < says.size() ? says.get(index) : "";
  }

  /** The room as it stands. */
  public ReadOnlyObjectProperty<RoomState> roomProperty() {
    return seat.stateProperty();
  }
}

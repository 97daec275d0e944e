package thinclick.client.window;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import thinclick.client.check.TapCheck;
import thinclick.client.check.Verdict;
import thinclick.client.link.RoomLink;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.session.Lead;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.material.Stock;

/**
 * The sound check of a whole room with one loudspeaker: a take in which everybody taps with every
 * click. Each computer judges its own chairs from their raw stamps and the click's instants, so the
 * loudspeaker's delay and the air are in what is measured.
 */
final class RoomCheck {
  /** What its drill is called, by which every window knows it. */
  static final String TITLE = "Sound check for the room";

  private static final int BARS = 10;

  private final Session session;
  private final Chairs chairs;
  private final CheckModel model;
  private final Predicate<String> stumbled;
  private final Map<Chair, List<Long>> taps = new HashMap<>();
  private String takeId = "";

  /**
   * @param stumbled whether the click of this computer did in a take, by its id
   */
  RoomCheck(Session session, Chairs chairs, CheckModel model, Predicate<String> stumbled) {
    this.session = session;
    this.chairs = chairs;
    this.model = model;
    this.stumbled = stumbled;
    session.stateProperty().addListener((any, old, now) -> follow(now));
  }

  /** Deals it to everybody who is here; for whoever leads. */
  void deal(double tempo) {
    RoomState room = session.state();
    if (room.leader() && room.betweenTakes()) {
      List<String> all = room.people().stream().map(Person::playerId).toList();
      session.lead().chooseAndDeal(new Lead.Hand(drill(all.size()), tempo, 1, all));
    }
  }

  /** Every beat for everybody, under every click. */
  private static Drill drill(int players) {
    Drill like = Stock.find("Even eighths");
    Drill.Cell beats = new Drill.Cell(8, List.of(0, 2, 4, 6), null, null, null, null, null);
    List<Drill.Chair> same =
        IntStream.rangeClosed(1, Math.max(1, players))
            .mapToObj(i -> Drill.Chair.of("" + i, beats))
            .toList();
    return new Drill(
        like.format(),
        like.version(),
        TITLE,
        1,
        like.meter(),
        like.stepsPerBeat(),
        like.swing(),
        like.tempo(),
        null,
        1,
        like.deal(),
        same,
        List.of(Stage.ofBeats(BARS, 1, 1, 2, 3, 4)),
        null);
  }

  /** A tap of a take, as it was stamped. */
  void tapped(Chair chair, long nanos) {
    if (!takeId.isEmpty()) {
      taps.computeIfAbsent(chair, one -> new ArrayList<>()).add(nanos);
    }
  }

  private void follow(RoomState room) {
    Dealt dealt = room.dealt();
    Announced announced = room.announced();
    if (room.takeRuns() && dealt != null && announced != null) {
      if (takeId.isEmpty() && dealt.title().equals(TITLE)) {
        takeId = announced.takeId();
        taps.clear();
      }
    } else if (!takeId.isEmpty()) {
      String over = takeId;
      takeId = "";
      judge(room, stumbled.test(over));
    }
  }

  private void judge(RoomState room, boolean clickStumbled) {
    RoomLink link = session.link();
    StepGrid grid = room.grid();
    ClickPlan plan = room.plan();
    if (link == null || grid == null || plan == null || room.stopped() == null) {
      return;
    }
    long end = room.stopped().atMicros();
    long[] clicks =
        Stream.concat(ClickPlan.countIn(grid, 1).stream(), plan.clicks(grid).stream())
            .mapToLong(Click::micros)
            .filter(micros -> micros <= end)
            .map(link::nanosOf)
            .toArray();
    for (Chair chair : chairs.all()) {
      List<Long> stamps = taps.get(chair);
      if (stamps != null) {
        Verdict verdict =
            TapCheck.judge(
                clicks,
                stamps.stream().flatMapToLong(LongStream::of).sorted().toArray(),
                clickStumbled);
        chair.delay().judgedInRoom(chair.inputProperty().get().name(), verdict);
        if (chair == chairs.first()) {
          model.judgedElsewhere(verdict);
        }
      }
    }
  }
}

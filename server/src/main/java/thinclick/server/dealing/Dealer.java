package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;

/** Deals a drill to players: the same seed, drill and players always give the same parts. */
public final class Dealer {
  /** The most players of one deal. */
  public static final int MOST_PLAYERS = 24;

  private Dealer() {}

  /**
   * A part for each player over the whole take.
   *
   * @param players 1 to 24 different names, in the order in which chairs are filled; where there
   *     are more than chairs, chairs are doubled with entries displaced differently
   * @param seed settles every free choice, 0 to 2^53 - 1
   * @param tempo beats a minute, 30 to 320
   * @param stages the click plan, whose bars are the take's length
   */
  public static Dealing deal(
      Drill drill, List<String> players, long seed, double tempo, List<Stage> stages) {
    check(players);
    Check.range("seed", seed, 0L, Check.MAX_SAFE);
    ClickPlan plan = new ClickPlan(stages);
    plan.checkMeter(drill.meter(), drill.stepsPerBeat());
    StepGrid grid = new StepGrid(drill.meter(), drill.stepsPerBeat(), tempo, drill.swing(), 0);
    DealFrame frame = new DealFrame(drill, List.copyOf(players), seed, plan.bars());
    List<Seat> seats = seats(frame);
    List<Part> parts = seats.stream().map(seat -> part(seat, frame.totalSteps())).toList();
    double tolerance =
        drill.toleranceMillis() != null ? drill.toleranceMillis() : Tolerance.millis(grid, parts);
    return new Dealing(
        parts, seats.stream().map(seat -> DealWords.sentence(frame, seat)).toList(), tolerance);
  }

  private static void check(List<String> players) {
    Check.size("players", players, 1, MOST_PLAYERS);
    Set<String> names = new HashSet<>();
    for (int i = 0; i < players.size(); i++) {
      if (!names.add(players.get(i))) {
        throw new BadInput(
            "players[" + i + "]",
            "expected a name not used before, found \"" + players.get(i) + "\" again");
      }
    }
  }

  private static List<Seat> seats(DealFrame frame) {
    List<Seat> seats = new ArrayList<>();
    EntrySearch search = new EntrySearch(frame);
    boolean canon = frame.drill().deal().kind() == DealKind.CANON;
    int chairs = canon ? 1 : frame.drill().chairs().size();
    for (int i = 0; i < frame.players().size(); i++) {
      Drill.Chair chair = canon ? frame.drill().chairs().get(0) : frame.chair(i);
      String player = frame.players().get(i);
      Seat first = i < chairs ? null : seats.get(i % chairs);
      boolean together = frame.drill().deal().kind() == DealKind.UNISON;
      int stillToCome = (frame.players().size() - i + chairs - 1) / chairs;
      int entry =
          first == null || together ? chair.entryStep() : search.entry(seats, chair, stillToCome);
      seats.add(new Seat(player, chair, chair.cell(), entry, first));
    }
    return seats;
  }

  private static Part part(Seat seat, int totalSteps) {
    return new Part(
        seat.player(),
        Math.min(seat.entryStep(), totalSteps - 1),
        0,
        seat.attackSteps(totalSteps),
        seat.accentSteps(totalSteps),
        seat.lengthSteps(totalSteps),
        null,
        seat.chair().feelMillis(),
        seat.chair().role(),
        seat.chair().role() == null ? null : Roles.weight(seat.chair().role()),
        seat.chair().instrument(),
        false,
        List.of(),
        null);
  }
}

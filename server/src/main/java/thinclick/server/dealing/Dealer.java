package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.material.Variations;

/** Deals a drill to players: the same seed, drill and players always give the same parts. */
public final class Dealer {
  /** The most players of one deal. */
  public static final int MOST_PLAYERS = 24;

  private static final int LONGEST_CHAIR_NAME = 32;

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
    return deal(drill, players, seed, tempo, stages, Map.of());
  }

  /**
   * As above, with an easier or a harder figure in the same cycle for some.
   *
   * @param abilities by player; who is not in it plays what is written
   */
  public static Dealing deal(
      Drill drill,
      List<String> players,
      long seed,
      double tempo,
      List<Stage> stages,
      Map<String, Ability> abilities) {
    check(players);
    Check.range("seed", seed, 0L, Check.MAX_SAFE);
    ClickPlan plan = new ClickPlan(stages);
    plan.checkMeter(drill.meter(), drill.stepsPerBeat());
    StepGrid grid = new StepGrid(drill.meter(), drill.stepsPerBeat(), tempo, drill.swing(), 0);
    DealFrame frame = new DealFrame(drill, List.copyOf(players), seed, plan.bars());
    List<Seat> seats = varied(frame, Seating.of(frame), abilities);
    Drill dealt = dealt(drill, seats, seed, stages);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < seats.size(); i++) {
      Part part = part(dealt, dealt.chairs().get(i), seats.get(i), frame.totalSteps(), tempo);
      parts.add(part.edited().answers(Echoes.of(frame, seats, i)).part());
    }
    double tolerance =
        drill.toleranceMillis() != null ? drill.toleranceMillis() : Tolerance.millis(grid, parts);
    return new Dealing(
        parts,
        seats.stream().map(seat -> DealWords.sentence(frame, seat)).toList(),
        tolerance,
        dealt);
  }

  private static List<Seat> varied(
      DealFrame frame, List<Seat> seats, Map<String, Ability> abilities) {
    if (!Seating.varies(frame.drill().deal().kind())) {
      return seats;
    }
    Drill drill = frame.drill();
    return seats.stream()
        .map(
            seat ->
                switch (abilities.getOrDefault(seat.player(), Ability.AS_WRITTEN)) {
                  case AS_WRITTEN -> seat;
                  case EASIER ->
                      seat.withCell(
                          Variations.easier(
                              seat.cell(), drill.meter(), drill.stepsPerBeat(), drill.groups()),
                          ", with the easier figure");
                  case HARDER ->
                      seat.withCell(Variations.harder(seat.cell()), ", with the harder figure");
                })
        .toList();
  }

  private static Drill dealt(Drill drill, List<Seat> seats, long seed, List<Stage> stages) {
    List<Drill.Chair> chairs = new ArrayList<>();
    for (int i = 0; i < seats.size(); i++) {
      String name = seats.get(i).player();
      // A chair's name is shorter than a player's may be.
      boolean fits = name.codePointCount(0, name.length()) <= LONGEST_CHAIR_NAME;
      chairs.add(seats.get(i).asChair(fits ? name : Integer.toString(i + 1)));
    }
    return new Drill(
        drill.format(),
        drill.version(),
        drill.title(),
        drill.level(),
        drill.meter(),
        drill.stepsPerBeat(),
        drill.swing(),
        drill.tempo(),
        drill.toleranceMillis(),
        drill.periodBars(),
        new Drill.Deal(DealKind.AS_WRITTEN, seed),
        chairs,
        stages,
        drill.groups());
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

  private static Part part(
      Drill dealt, Drill.Chair chair, Seat seat, int totalSteps, double tempo) {
    List<Integer> attacks = seat.attackSteps(totalSteps);
    return new Part(
        seat.player(),
        Math.min(seat.entryStep(), totalSteps - 1),
        0,
        attacks,
        seat.accentSteps(totalSteps),
        seat.lengthSteps(totalSteps),
        PartPitches.of(dealt, chair, attacks, tempo),
        chair.feelMillis(),
        chair.role(),
        chair.role() == null ? null : Role.of(chair.role()).weight(),
        chair.instrument(),
        false,
        List.of(),
        null);
  }
}

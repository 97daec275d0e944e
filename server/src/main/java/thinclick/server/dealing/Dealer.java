package thinclick.server.dealing;

import static thinclick.server.dealing.Ability.AS_WRITTEN;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.DealtFigure;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.material.Difficulty;
import thinclick.server.material.Variations;
import thinclick.server.words.Said;

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
    return deal(
        drill,
        players,
        seed,
        tempo,
        stages,
        (seat, level) -> abilities.getOrDefault(seat, AS_WRITTEN));
  }

  /**
   * As above, with the figure fitted to the level that each player stands at: an easier one where
   * the written part is above it, a harder one where it is below.
   *
   * @param levels by player, 1 to 10; who is not in it plays what is written
   */
  public static Dealing dealFitted(
      Drill drill,
      List<String> players,
      long seed,
      double tempo,
      List<Stage> stages,
      Map<String, Integer> levels) {
    return deal(
        drill,
        players,
        seed,
        tempo,
        stages,
        (player, written) -> {
          Integer level = levels.get(player);
          return level == null ? AS_WRITTEN : Ability.fitting(level, written);
        });
  }

  /** Chooses for a player from the level of the part as it is written. */
  private interface Fitting {
    Ability of(String player, int level);
  }

  private static Dealing deal(
      Drill drill,
      List<String> players,
      long seed,
      double tempo,
      List<Stage> stages,
      Fitting fitting) {
    check(players);
    Check.range("seed", seed, 0L, Check.MAX_SAFE);
    ClickPlan plan = new ClickPlan(stages);
    plan.checkMeter(drill.meter(), drill.stepsPerBeat());
    StepGrid grid = new StepGrid(drill.meter(), drill.stepsPerBeat(), tempo, drill.swing(), 0);
    DealFrame frame = new DealFrame(drill, List.copyOf(players), seed, plan.bars());
    List<Seat> written = Seating.of(frame);
    Drill asWritten = dealt(drill, written, seed, stages);
    List<Ability> abilities = new ArrayList<>();
    List<Integer> levels = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      int level = Difficulty.level(asWritten, i, tempo);
      levels.add(level);
      boolean varies = Seating.varies(drill.deal().kind());
      abilities.add(varies ? fitting.of(written.get(i).player(), level) : AS_WRITTEN);
    }
    List<Seat> seats = varied(drill, written, abilities);
    Drill dealt = dealt(drill, seats, seed, stages);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < seats.size(); i++) {
      Part part = part(dealt, dealt.chairs().get(i), seats.get(i), frame.totalSteps(), tempo);
      parts.add(
          part.edited()
              .answers(Echoes.of(frame, seats, i))
              .level(level(Difficulty.level(dealt, i, tempo), levels.get(i), abilities.get(i)))
              .figure(figure(abilities.get(i)))
              .part());
    }
    double tolerance =
        drill.toleranceMillis() != null ? drill.toleranceMillis() : Tolerance.millis(grid, parts);
    return new Dealing(
        parts,
        seats.stream().map(seat -> DealWords.sentence(frame, seat)).toList(),
        tolerance,
        dealt);
  }

  /**
   * The level of a part: by its measures, but an easier figure counts at least one less than what
   * is written, and a harder one at least one more, since fewer notes may well lie as awkwardly.
   */
  private static int level(int measured, int written, Ability ability) {
    return switch (ability) {
      case EASIER -> Math.max(1, Math.min(measured, written - 1));
      case AS_WRITTEN -> measured;
      case HARDER -> Math.min(10, Math.max(measured, written + 1));
    };
  }

  private static @Nullable DealtFigure figure(Ability ability) {
    return switch (ability) {
      case EASIER -> DealtFigure.EASIER;
      case AS_WRITTEN -> null;
      case HARDER -> DealtFigure.HARDER;
    };
  }

  private static List<Seat> varied(Drill drill, List<Seat> seats, List<Ability> abilities) {
    List<Seat> varied = new ArrayList<>();
    for (int i = 0; i < seats.size(); i++) {
      Seat seat = seats.get(i);
      varied.add(
          switch (abilities.get(i)) {
            case AS_WRITTEN -> seat;
            case EASIER ->
                seat.withCell(
                    Variations.easier(
                        seat.cell(), drill.meter(), drill.stepsPerBeat(), drill.groups()),
                    Said.of("deal.easier"));
            case HARDER -> seat.withCell(Variations.harder(seat.cell()), Said.of("deal.harder"));
          });
    }
    return varied;
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
    int perBar = dealt.stepsPerBar();
    List<Integer> attacks = seat.attackSteps(totalSteps, perBar);
    return new Part(
            seat.player(),
            Math.min(seat.entryStep(), totalSteps - 1),
            0,
            attacks,
            seat.accentSteps(totalSteps, perBar),
            seat.lengthSteps(totalSteps, perBar),
            PartPitches.of(dealt, chair, attacks, tempo),
            chair.feelMillis(),
            chair.role(),
            chair.role() == null ? null : Role.of(chair.role()).weight(),
            chair.instrument(),
            false,
            List.of(),
            null)
        .edited()
        .free(seat.free(totalSteps / perBar))
        .part();
  }
}

package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.IntStream;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Cells;
import thinclick.server.material.Places;
import thinclick.server.words.Said;

/** The ways of dealing that need no search, and those that only seek entries. */
final class Seating {
  private static final List<Integer> LAYERS = List.of(3, 4, 2, 6);
  private static final List<Integer> HARD_LAYERS = List.of(3, 4, 5, 7, 2, 6);

  /** From this level on layers are of fives and sevens too. */
  private static final int LEVEL_OF_HARD_LAYERS = 6;

  private Seating() {}

  static List<Seat> of(DealFrame frame) {
    return switch (frame.drill().deal().kind()) {
      case AS_WRITTEN -> doubled(frame, frame.drill().chairs(), true);
      case UNISON -> doubled(frame, frame.drill().chairs(), false);
      case CANON -> doubled(frame, frame.drill().chairs().subList(0, 1), true);
      case HOCKET -> hocket(frame);
      case LAYERS -> layers(frame);
      case CALL_AND_ANSWER -> callAndAnswer(frame);
      case TRADING -> trading(frame);
      case ROLES -> RoleSeating.of(frame);
    };
  }

  /** Each chair as it stands; players beyond the chairs double them. */
  private static List<Seat> doubled(DealFrame frame, List<Drill.Chair> chairs, boolean displaced) {
    List<Seat> seats = new ArrayList<>();
    EntrySearch search = new EntrySearch(frame);
    int players = frame.players().size();
    for (int i = 0; i < players; i++) {
      Drill.Chair chair = chairs.get(i % chairs.size());
      boolean first = i < chairs.size();
      int stillToCome = (players - i + chairs.size() - 1) / chairs.size();
      int entry = first || !displaced ? chair.entryStep() : search.entry(seats, chair, stillToCome);
      seats.add(
          new Seat(
              frame.players().get(i),
              chair,
              chair.cell(),
              entry,
              first ? null : seats.get(i % chairs.size())));
    }
    return seats;
  }

  /**
   * The attacks of all chairs together, dealt one after the other, so that no two coincide; the
   * seed settles the order of players.
   */
  private static List<Seat> hocket(DealFrame frame) {
    int players = frame.players().size();
    int period = frame.periodSteps();
    TreeSet<Integer> union = new TreeSet<>();
    for (Drill.Chair chair : frame.drill().chairs()) {
      union.addAll(Cells.repeated(chair.cell(), period).attackSteps());
    }
    int repetitions = (2 * players + union.size() - 1) / union.size();
    int steps = period * repetitions;
    List<Integer> all =
        Cells.repeated(Drill.Cell.of(period, List.copyOf(union)), steps).attackSteps();
    List<Integer> order = shuffled(players, frame.seed());
    List<List<Integer>> hands = new ArrayList<>();
    IntStream.range(0, players).forEach(i -> hands.add(new ArrayList<>()));
    for (int i = 0; i < all.size(); i++) {
      hands.get(order.get(i % players)).add(all.get(i));
    }
    List<Seat> seats = new ArrayList<>();
    for (int i = 0; i < players; i++) {
      Said how = Said.of("deal.hocket", hands.get(i).size(), all.size());
      seats.add(
          new Seat(
              frame.players().get(i),
              frame.chair(i),
              Drill.Cell.of(steps, hands.get(i)),
              0,
              null,
              List.of(how)));
    }
    return seats;
  }

  private static List<Integer> shuffled(int count, long seed) {
    List<Integer> order = new ArrayList<>(IntStream.range(0, count).boxed().toList());
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = count - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      int swapped = order.get(i);
      order.set(i, order.get(j));
      order.set(j, swapped);
    }
    return order;
  }

  /** A grouping for each chair; chairs beyond the groupings enter the same ones elsewhere. */
  private static List<Seat> layers(DealFrame frame) {
    List<Drill.Chair> layers = new ArrayList<>();
    for (Drill.Chair chair : frame.drill().chairs()) {
      layers.add(chair);
    }
    boolean hard = frame.drill().level() >= LEVEL_OF_HARD_LAYERS;
    Drill.Chair like = frame.drill().chairs().get(0);
    for (int size : hard ? HARD_LAYERS : LAYERS) {
      boolean there =
          layers.stream().anyMatch(layer -> Integer.valueOf(size).equals(layer.cell().grouping()));
      if (!there) {
        Drill.Cell cell = Drill.Cell.of(size, List.of(0), size);
        layers.add(like.edited().named(Places.groupsOf(size)).cell(cell).entryStep(0).chair());
      }
    }
    return doubled(frame, layers, true);
  }

  /** Every other player answers a period later what the others call, or what is written for it. */
  private static List<Seat> callAndAnswer(DealFrame frame) {
    int period = frame.periodSteps();
    List<Seat> seats = new ArrayList<>();
    for (int i = 0; i < frame.players().size(); i++) {
      boolean calls = i % 2 == 0;
      Drill.Chair chair = frame.chair(i % 2);
      Drill.Cell turn = turn(chair.cell(), period, calls ? 0 : 1, 2);
      Said how = Said.of(calls ? "deal.calling" : "deal.answering");
      seats.add(
          new Seat(
              frame.players().get(i),
              chair.edited().free(inTurn(frame, i % 2, calls ? 0 : 1, 2)).chair(),
              turn,
              0,
              null,
              List.of(how)));
    }
    return seats;
  }

  /**
   * One after the other plays a period; with more players than turns, several share one. Where the
   * drill leaves bars free, all keep their figures instead, and the free bars go round.
   */
  private static List<Seat> trading(DealFrame frame) {
    if (frame.drill().chairs().stream().anyMatch(chair -> !chair.free().isEmpty())) {
      return freeBarsGoRound(frame);
    }
    int period = frame.periodSteps();
    int turns = turns(frame);
    int bars = period / frame.stepsPerBar();
    List<Seat> seats = new ArrayList<>();
    for (int i = 0; i < frame.players().size(); i++) {
      Drill.Chair chair = frame.chair(i);
      Said how = Said.of("deal.trading", bars, Integer.toString(bars), bars * turns);
      Drill.Cell cell = turn(chair.cell(), period, i % turns, turns);
      seats.add(new Seat(frame.players().get(i), chair, cell, 0, null, List.of(how)));
    }
    return seats;
  }

  private static List<Seat> freeBarsGoRound(DealFrame frame) {
    int turns = turns(frame);
    List<Seat> kept = doubled(frame, frame.drill().chairs(), true);
    List<Seat> seats = new ArrayList<>();
    for (int i = 0; i < kept.size(); i++) {
      seats.add(
          kept.get(i).withFree(inTurn(frame, i % frame.drill().chairs().size(), i % turns, turns)));
    }
    return seats;
  }

  /** A chair's free bars, counted in its turn, as bars of the take. */
  private static List<FreeBars> inTurn(DealFrame frame, int chair, int turn, int turns) {
    int period = frame.periodSteps() / frame.stepsPerBar();
    return frame.drill().chairs().get(chair % frame.drill().chairs().size()).free().stream()
        .map(
            bars -> {
              if (bars.toBar() > period) {
                throw new BadInput(
                    "chairs[" + chair + "].free",
                    "expected bars within a turn's " + period + ", found " + bars.toBar());
              }
              return new FreeBars(
                  turn * period + bars.fromBar(), turn * period + bars.toBar(), turns * period);
            })
        .toList();
  }

  /**
   * How many turns there are in trading: one a player, as long as the take has periods for them.
   */
  static int turns(DealFrame frame) {
    int periods = Math.max(1, frame.totalSteps() / frame.periodSteps());
    return Math.max(1, Math.min(frame.players().size(), periods));
  }

  /** A figure that fills one of several periods and leaves the others. */
  private static Drill.Cell turn(Drill.Cell cell, int period, int turn, int turns) {
    return Cells.inTurn(Cells.repeated(cell, period), turn, turns);
  }

  /** True for the ways in which every chair keeps its own figure, so that it can be varied. */
  static boolean varies(DealKind kind) {
    return kind != DealKind.HOCKET && kind != DealKind.ROLES;
  }
}

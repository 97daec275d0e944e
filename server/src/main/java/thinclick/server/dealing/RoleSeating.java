package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.server.material.Cells;
import thinclick.server.material.MetricWeights;
import thinclick.server.words.RoleWords;
import thinclick.server.words.Said;

/** Deals by what each role is to do: figures that stand first, then those that fit round them. */
final class RoleSeating {
  /** Who sits down first where the drill names no roles. */
  private static final List<Role> FIRST =
      List.of(Role.TIMELINE, Role.BASS, Role.RIDE, Role.COMPING, Role.ANSWER, Role.SHAKER);

  /** Who comes after them, over and over. */
  private static final List<Role> THEN = List.of(Role.OTHER, Role.COMPING, Role.ANSWER);

  private RoleSeating() {}

  static List<Seat> of(DealFrame frame) {
    int period = Math.max(frame.periodSteps(), 2 * frame.stepsPerBar());
    List<Role> roles = roles(frame);
    Interlock interlock = new Interlock(frame, period);
    Drill.@Nullable Cell[] cells = new Drill.Cell[roles.size()];
    for (int i = 0; i < cells.length; i++) {
      if (!roles.get(i).adapts()) {
        cells[i] = standing(frame, roles.get(i), own(frame, i), period);
        interlock.stand(roles.get(i), cells[i]);
      }
    }
    List<Role> adapting = roles.stream().filter(Role::adapts).toList();
    List<Drill.Cell> found = interlock.seek(adapting);
    List<Seat> seats = new ArrayList<>();
    int next = 0;
    for (int i = 0; i < cells.length; i++) {
      Drill.Cell standing = cells[i];
      Drill.Cell cell = standing == null ? found.get(next++) : standing;
      seats.add(seat(frame, i, roles.get(i), cell));
    }
    return seats;
  }

  private static Seat seat(DealFrame frame, int player, Role role, Drill.Cell cell) {
    Drill.@Nullable Chair own = own(frame, player);
    Drill.Chair like = own == null ? frame.drill().chairs().get(0) : own;
    String named = own == null || own.role() == null ? role.word() : own.role();
    Drill.Chair chair =
        like.edited()
            .role(named)
            .cell(cell)
            .entryStep(0)
            .feelMillis(own == null ? null : own.feelMillis())
            .instrument(
                own == null || own.instrument() == null ? role.instrument() : own.instrument())
            .free(own == null ? List.of() : own.free())
            .chair();
    return new Seat(
        frame.players().get(player),
        chair,
        cell,
        0,
        null,
        List.of(Said.of("deal.role", RoleWords.said(named))));
  }

  /** The chair that the drill writes for a player, where it has one for each role. */
  private static Drill.@Nullable Chair own(DealFrame frame, int player) {
    List<Drill.Chair> chairs = frame.drill().chairs();
    return player < chairs.size() && (chairs.size() > 1 || chairs.get(0).role() != null)
        ? chairs.get(player)
        : null;
  }

  private static List<Role> roles(DealFrame frame) {
    List<Role> roles = new ArrayList<>();
    List<Role> free = new ArrayList<>(FIRST);
    for (int i = 0; i < frame.players().size(); i++) {
      Drill.@Nullable Chair own = own(frame, i);
      Role role;
      if (own != null) {
        role = Role.of(own.role());
      } else {
        role = free.isEmpty() ? THEN.get(i % THEN.size()) : free.remove(0);
      }
      free.remove(role);
      roles.add(role);
    }
    return roles;
  }

  private static Drill.Cell standing(
      DealFrame frame, Role role, Drill.@Nullable Chair own, int period) {
    if (own != null) {
      return Cells.repeated(own.cell(), period);
    }
    int perBeat = frame.drill().stepsPerBeat();
    int[] weights = MetricWeights.ofBar(frame.drill().meter(), perBeat, frame.drill().groups());
    if (role == Role.TIMELINE) {
      return Cells.repeated(frame.drill().chairs().get(0).cell(), period);
    }
    int beatWeight = weights[perBeat];
    List<Integer> steps =
        IntStream.range(0, period)
            .filter(
                step ->
                    switch (role) {
                      case BASS -> step % perBeat == 0;
                      case RIDE ->
                          step % perBeat == 0 || weights[(step + 1) % weights.length] > beatWeight;
                      default -> true;
                    })
            .boxed()
            .toList();
    return Drill.Cell.of(period, steps);
  }
}

package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.FreeBars;
import thinclick.server.material.Groupings;
import thinclick.server.words.PlaceWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.ShiftWords;

/** Who comes in where, a plain sentence for each seat. */
final class DealWords {
  private DealWords() {}

  /** {@code "Ilse comes in on the and of 2 in bar 1, on threes that meet the one in bar 4."} */
  static Said sentence(DealFrame frame, Seat seat) {
    Drill drill = frame.drill();
    List<Integer> attacks = seat.attackSteps(frame.totalSteps(), frame.stepsPerBar());
    if (attacks.isEmpty()) {
      return Said.of("deal.nothing", seat.player());
    }
    List<Said> says = new ArrayList<>();
    says.add(
        Said.of(
            "deal.enters",
            seat.player(),
            PlaceWords.entry(attacks.get(0), drill.meter(), drill.stepsPerBeat())));
    groups(frame, seat).ifPresent(says::add);
    following(frame, seat).ifPresent(says::add);
    says.addAll(seat.how());
    feel(seat).ifPresent(says::add);
    seat.chair().free().stream().map(DealWords::free).forEach(says::add);
    return Said.of("sentence", new Said.Row(says, false));
  }

  private static Optional<Said> groups(DealFrame frame, Seat seat) {
    Integer grouping = seat.cell().grouping();
    if (grouping == null) {
      return Optional.empty();
    }
    Said groups = PlaceWords.groupsOf(grouping);
    Optional<Integer> round =
        Groupings.comesRound(
            seat.cell(),
            seat.entryStep(),
            frame.drill().stepsPerBeat(),
            frame.stepsPerBar(),
            frame.bars());
    boolean again = seat.entryStep() % frame.stepsPerBar() == 0;
    String meets = again ? "deal.meetsAgain" : "deal.meets";
    return Optional.of(
        round.map(bar -> Said.of(meets, groups, bar + 1)).orElse(Said.of("deal.groups", groups)));
  }

  /** {@code "25 ms behind the others"}: what is asked for must be said to who is to do it. */
  private static Optional<Said> feel(Seat seat) {
    Feel feel = seat.chair().feelMillis();
    if (feel == null || feel.equals(Feel.NONE)) {
      return Optional.empty();
    }
    return Optional.of(
        feel.onbeat() == feel.offbeat()
            ? lying(feel.onbeat())
            : Said.of("deal.feel", lying(feel.onbeat()), lying(feel.offbeat())));
  }

  private static Said lying(double millis) {
    return millis == 0
        ? Said.of("deal.feel.with")
        : Said.of(
            millis > 0 ? "deal.feel.behind" : "deal.feel.ahead",
            Quantity.millis(millis, null).size());
  }

  /** {@code "free in bars 5 to 8 of every 8"}. */
  private static Said free(FreeBars bars) {
    Said where =
        bars.toBar() - bars.fromBar() == 1
            ? Said.of("deal.freeBar", bars.toBar())
            : Said.of("deal.freeBars", bars.fromBar() + 1, bars.toBar());
    Integer every = bars.everyBars();
    return every == null ? where : Said.of("deal.freeEvery", where, every);
  }

  private static Optional<Said> following(DealFrame frame, Seat seat) {
    if (seat.follows() == null || seat.entryStep() == seat.follows().entryStep()) {
      return Optional.empty();
    }
    int steps = seat.entryStep() - seat.follows().entryStep();
    Said apart =
        ShiftWords.apart(Math.abs(steps), frame.drill().meter(), frame.drill().stepsPerBeat());
    return Optional.of(
        Said.of(steps > 0 ? "deal.after" : "deal.before", apart, seat.follows().player()));
  }
}

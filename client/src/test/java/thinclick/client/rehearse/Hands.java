package thinclick.client.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;
import java.util.function.LongUnaryOperator;
import thinclick.client.link.LinkLoop;
import thinclick.client.standin.Player;
import thinclick.client.standin.Slip;
import thinclick.client.standin.Timing;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.HeardAttack;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.time.Timers;

/** A pair of hands for one take: what is to be tapped, and when, by the model of stand-ins. */
final class Hands {
  /** What comes so much too late was slept through. */
  private static final long SLEPT_NANOS = 500_000_000;

  private final LinkLoop loop;
  private final LongUnaryOperator nanosOf;
  private final LongConsumer taps;
  private final Player player;
  private final LongUnaryOperator microsOf;
  private Timers.Pending next = () -> {};
  private boolean still;

  /**
   * @param nanosOf this computer's clock at a room time
   * @param microsOf room time at this computer's clock
   * @param taps is told the instant of each tap, this computer's clock, when it comes
   */
  Hands(
      LinkLoop loop,
      LongUnaryOperator nanosOf,
      LongUnaryOperator microsOf,
      LongConsumer taps,
      Dealt dealt,
      Announced announced,
      Timing timing,
      Slip slip,
      long seed) {
    this.loop = loop;
    this.nanosOf = nanosOf;
    this.microsOf = microsOf;
    this.taps = taps;
    StepGrid grid = dealt.gridFrom(announced.startMicros());
    List<Part> others = new ArrayList<>(dealt.parts());
    Part own = dealt.parts().stream().filter(p -> p.player().equals(dealt.own())).findAny().get();
    others.remove(own);
    player =
        new Player(
            timing, slip, own, others, grid, new ClickPlan(dealt.stages()).clicks(grid), seed);
    player.skipTo(microsOf.applyAsLong(loop.nanos()));
    settleNext();
  }

  void hears(String name, HeardAttack attack) {
    if (!attack.again()) {
      player.heard(name, attack.micros());
    }
  }

  /** The take is over, or nobody is at the instrument any more. */
  void rest() {
    still = true;
    next.cancel();
  }

  private void settleNext() {
    Long micros = player.settleMicros();
    if (!still && micros != null) {
      next = loop.at(nanosOf.applyAsLong(micros), this::play);
    }
  }

  private void play() {
    Long due = player.settleMicros();
    if (due == null) {
      return;
    }
    if (loop.nanos() - nanosOf.applyAsLong(due) > SLEPT_NANOS) {
      player.skipTo(microsOf.applyAsLong(loop.nanos()));
    } else {
      long nanos = nanosOf.applyAsLong(player.settle().micros());
      loop.at(
          nanos,
          () -> {
            if (!still && loop.nanos() - nanos < SLEPT_NANOS) {
              taps.accept(nanos);
            }
          });
    }
    settleNext();
  }
}

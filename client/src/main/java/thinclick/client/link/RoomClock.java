package thinclick.client.link;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.client.clock.ClockView;
import thinclick.protocol.file.Span;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews;

/**
 * Room time as a link knows it: exchanges while the line stands, a mapping that is held still in a
 * take, and a word to the room where this computer slept through a part of one.
 */
final class RoomClock {
  private final ClockExchanges exchanges;
  private final Consumer<ClientMessage> report;
  private final RoomListener listener;
  private volatile ClockView view;
  private volatile @Nullable Span sleep;

  // The link's thread only.
  private TakeNews.@Nullable Announced take;
  private long takeOverMicros;

  /**
   * @param send a question goes out now or not at all
   * @param report what goes out as soon as the line is back
   */
  RoomClock(
      LinkOptions options,
      long seed,
      Consumer<ClientMessage> send,
      Consumer<ClientMessage> report,
      RoomListener listener) {
    this.report = report;
    this.listener = listener;
    this.view = ClockView.unknown(options.loop().nanos());
    RoomLink other = options.clockOf();
    this.exchanges =
        new ClockExchanges(
            options.loop(),
            seed,
            send,
            this::changed,
            this::slept,
            other == null ? null : other.shared());
  }

  /** What is believed now; from any thread. */
  ClockView view() {
    return view;
  }

  /** Welcomed, in that epoch of the room. */
  void online(long epoch) {
    exchanges.online(epoch);
  }

  void offline() {
    exchanges.offline();
  }

  void answered(AnswerMessage.ClockAnswer answer, long arrivedNanos) {
    exchanges.answered(answer, arrivedNanos);
  }

  /** This player plays in that take. */
  void plays(TakeNews.Announced announced) {
    take = announced;
    takeOverMicros = Long.MAX_VALUE;
  }

  /** From the count-in to the end of the take nothing steps. */
  void hold(TakeNews.Announced announced) {
    exchanges.hold(announced.countInMicros(), announced.startMicros());
  }

  /** The take is over. */
  void release(TakeNews.Stopped stopped) {
    takeOverMicros = stopped.atMicros();
    exchanges.release();
  }

  /** This computer slept; where a take went on meanwhile, its player was away. */
  private void slept(Span span) {
    sleep = span;
    TakeNews.Announced last = take;
    if (last != null && last.epoch() == view.epoch() && span.fromMicros() < takeOverMicros) {
      report.accept(
          new TakeMessage.Asleep(last.takeId(), last.epoch(), span.fromMicros(), span.toMicros()));
    }
  }

  private void changed(ClockView now) {
    view = now;
    listener.clockChanged(now);
  }

  /** For another chair at this computer. */
  ClockExchanges.Shared shared() {
    return new ClockExchanges.Shared() {
      @Override
      public ClockView view() {
        return view;
      }

      @Override
      public @Nullable Span sleep() {
        return sleep;
      }
    };
  }
}

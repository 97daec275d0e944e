package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import thinclick.protocol.time.MonotonicClock;

/** First in the pipeline: reads the clock when bytes come, before anything is done with them. */
final class ArrivalStamp extends ChannelInboundHandlerAdapter {
  private final MonotonicClock clock;
  private long nanos;
  private long heardNanos = System.nanoTime();

  ArrivalStamp(MonotonicClock clock) {
    this.clock = clock;
    this.nanos = clock.nanos();
  }

  /** The clock at the last bytes' arrival. */
  long nanos() {
    return nanos;
  }

  /** The computer's own clock at that moment, whatever clock the rooms go by. */
  long heardNanos() {
    return heardNanos;
  }

  @Override
  public void channelRead(ChannelHandlerContext context, Object bytes) {
    nanos = clock.nanos();
    heardNanos = System.nanoTime();
    context.fireChannelRead(bytes);
  }
}

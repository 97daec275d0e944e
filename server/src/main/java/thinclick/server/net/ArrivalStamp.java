package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import thinclick.protocol.time.MonotonicClock;

/** First in the pipeline: reads the clock when bytes come, before anything is done with them. */
final class ArrivalStamp extends ChannelInboundHandlerAdapter {
  private final MonotonicClock clock;
  private long nanos;
  private long heardNanos;

  ArrivalStamp(MonotonicClock clock) {
    this.clock = clock;
    this.nanos = clock.nanos();
  }

  /** The clock at the last bytes' arrival. */
  long nanos() {
    return nanos;
  }

  /** The event loop's clock at that moment, whatever clock the rooms go by. */
  long heardNanos() {
    return heardNanos;
  }

  @Override
  public void handlerAdded(ChannelHandlerContext context) {
    heardNanos = context.executor().ticker().nanoTime();
  }

  @Override
  public void channelRead(ChannelHandlerContext context, Object bytes) {
    nanos = clock.nanos();
    heardNanos = context.executor().ticker().nanoTime();
    context.fireChannelRead(bytes);
  }
}

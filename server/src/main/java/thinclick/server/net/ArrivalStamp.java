package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.util.ReferenceCountUtil;
import thinclick.protocol.time.MonotonicClock;

/**
 * First in the pipeline: reads the clock when bytes come, before anything is done with them. What
 * still comes from somebody who has been told goodbye goes no further.
 */
final class ArrivalStamp extends ChannelInboundHandlerAdapter {
  private final MonotonicClock clock;
  private final Connection connection;
  private long nanos;
  private long heardNanos;

  ArrivalStamp(MonotonicClock clock, Connection connection) {
    this.clock = clock;
    this.connection = connection;
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
    if (connection.closing()) {
      ReferenceCountUtil.release(bytes);
    } else {
      context.fireChannelRead(bytes);
    }
  }
}

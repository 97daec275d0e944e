package thinclick.server.net;

import io.netty.channel.Channel;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.EventLoop;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A line goes from the event loop it is on to another. Its handlers see {@code channelUnregistered}
 * on the old loop, where they stop what they have timed, and {@code channelRegistered} on the new
 * one. Nothing may be read of it meanwhile, and nobody else may know it.
 */
@SuppressWarnings("FutureReturnValueIgnored") // both are listened to
final class LoopChange {
  private static final Logger LOG = LoggerFactory.getLogger(LoopChange.class);

  private LoopChange() {}

  /**
   * Begins; on the channel's loop, with {@code autoRead} off.
   *
   * @param lost called, on either loop, where the line does not arrive
   */
  static void begin(Channel channel, EventLoop to, Runnable lost) {
    channel
        .deregister()
        .addListener(
            (ChannelFutureListener)
                left -> {
                  if (left.isSuccess() && channel.isOpen()) {
                    to.register(channel).addListener(arrival(lost));
                  } else {
                    lost.run();
                  }
                });
  }

  private static ChannelFutureListener arrival(Runnable lost) {
    return arrived -> {
      if (!arrived.isSuccess()) {
        LOG.debug("a line was lost between two loops", arrived.cause());
        lost.run();
      }
    };
  }
}

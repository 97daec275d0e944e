package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;

/**
 * Nothing more is read of one line until what was read last is dealt with, so that its messages
 * keep their order. On the channel's loop.
 */
final class Hold {
  private boolean on;

  boolean on() {
    return on;
  }

  void begin(ChannelHandlerContext context) {
    on = true;
    context.channel().config().setAutoRead(false);
  }

  /** What was held may be dealt with; what follows is still not read. */
  void lift() {
    on = false;
  }

  /** What follows is read, perhaps before this returns; does nothing where it is held again. */
  void readOn(ChannelHandlerContext context) {
    if (!on) {
      context.channel().config().setAutoRead(true);
    }
  }
}

package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import java.net.InetAddress;
import java.net.InetSocketAddress;

/** Who is at the other end of a connection. */
final class Remote {
  private Remote() {}

  static InetAddress of(ChannelHandlerContext context) {
    return context.channel().remoteAddress() instanceof InetSocketAddress from
        ? from.getAddress()
        : InetAddress.getLoopbackAddress();
  }
}

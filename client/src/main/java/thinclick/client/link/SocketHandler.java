package thinclick.client.link;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.handler.codec.http.websocketx.CloseWebSocketFrame;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketClientProtocolHandler.ClientHandshakeStateEvent;
import io.netty.handler.codec.http.websocketx.WebSocketFrame;

/** Netty's edge: turns frames and endings into the owner's three calls. */
@SuppressWarnings("FutureReturnValueIgnored") // closing needs no answer
final class SocketHandler extends SimpleChannelInboundHandler<WebSocketFrame> {
  private final Socket.Owner owner;
  private final LinkLoop loop;
  private boolean ended;

  SocketHandler(Socket.Owner owner, LinkLoop loop) {
    this.owner = owner;
    this.loop = loop;
  }

  @Override
  public void userEventTriggered(ChannelHandlerContext ctx, Object event) throws Exception {
    if (event == ClientHandshakeStateEvent.HANDSHAKE_COMPLETE) {
      owner.opened();
    } else if (event == ClientHandshakeStateEvent.HANDSHAKE_TIMEOUT) {
      end(1006, "the server does not answer");
      ctx.close();
    } else {
      super.userEventTriggered(ctx, event);
    }
  }

  @Override
  protected void channelRead0(ChannelHandlerContext ctx, WebSocketFrame frame) {
    long arrivedNanos = loop.nanos();
    if (frame instanceof TextWebSocketFrame text) {
      owner.received(text.text(), arrivedNanos);
    } else if (frame instanceof CloseWebSocketFrame close) {
      end(close.statusCode() == -1 ? 1005 : close.statusCode(), close.reasonText());
      ctx.close();
    }
  }

  @Override
  public void channelInactive(ChannelHandlerContext ctx) {
    end(1006, "the line was cut");
  }

  @Override
  public void exceptionCaught(ChannelHandlerContext ctx, Throwable cause) {
    end(1006, "the line failed: " + cause.getMessage());
    ctx.close();
  }

  /** Tells the ending once, whatever comes first. */
  void end(int code, String says) {
    if (!ended) {
      ended = true;
      owner.closed(code, says);
    }
  }
}

package thinclick.client.link;

import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.handler.codec.http.HttpResponseStatus;
import io.netty.handler.codec.http.websocketx.CloseWebSocketFrame;
import io.netty.handler.codec.http.websocketx.PingWebSocketFrame;
import io.netty.handler.codec.http.websocketx.PongWebSocketFrame;
import io.netty.handler.codec.http.websocketx.TextWebSocketFrame;
import io.netty.handler.codec.http.websocketx.WebSocketClientHandshakeException;
import io.netty.handler.codec.http.websocketx.WebSocketClientProtocolHandler.ClientHandshakeStateEvent;
import io.netty.handler.codec.http.websocketx.WebSocketFrame;
import io.netty.handler.ssl.NotSslRecordException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/** Netty's edge: turns frames and endings into the owner's three calls. */
@SuppressWarnings("FutureReturnValueIgnored") // closing needs no answer
final class SocketHandler extends SimpleChannelInboundHandler<WebSocketFrame> {
  private final Socket.Owner owner;
  private final LinkLoop loop;
  private final Deque<CompletableFuture<Void>> pinged = new ArrayDeque<>();
  private @Nullable Channel channel;
  private boolean ended;

  SocketHandler(Socket.Owner owner, LinkLoop loop) {
    this.owner = owner;
    this.loop = loop;
  }

  @Override
  public void userEventTriggered(ChannelHandlerContext ctx, Object event) throws Exception {
    if (event == ClientHandshakeStateEvent.HANDSHAKE_COMPLETE) {
      channel = ctx.channel();
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
    } else if (frame instanceof PongWebSocketFrame) {
      CompletableFuture<Void> oldest = pinged.poll();
      if (oldest != null) {
        oldest.complete(null);
      }
    } else if (frame instanceof CloseWebSocketFrame close) {
      end(close.statusCode() == -1 ? 1005 : close.statusCode(), close.reasonText());
      ctx.close();
    }
  }

  @Override
  public void channelInactive(ChannelHandlerContext ctx) {
    pinged.forEach(waiting -> waiting.complete(null));
    pinged.clear();
    end(1006, "the line was cut");
  }

  @Override
  public void exceptionCaught(ChannelHandlerContext ctx, Throwable cause) {
    for (Throwable each = cause; each != null; each = each.getCause()) {
      if (each instanceof Trust.Untrusted untrusted) {
        end(Socket.NOT_TRUSTED, String.valueOf(untrusted.getMessage()));
      } else if (each instanceof NotSslRecordException) {
        end(
            Socket.NO_HOST,
            "the server does not encrypt; ws:// before its address comes in without");
      } else if (each instanceof WebSocketClientHandshakeException refused
          && refused.response() != null) {
        end(
            Socket.NO_HOST,
            refused.response().status().equals(HttpResponseStatus.UPGRADE_REQUIRED)
                ? "the server takes encrypted lines only; wss:// before its address"
                : "no host of rehearsals there: it answers " + refused.response().status());
      }
    }
    end(1006, "the line failed: " + cause.getMessage());
    ctx.close();
  }

  /** A message goes out. */
  void sends() {
    loop.sends(this);
  }

  /**
   * Completes when the server has read all that was sent before and all it had sent by then has
   * been handled here, or when the line is gone. On the loop.
   */
  CompletableFuture<Void> settled() {
    Channel open = channel;
    if (open == null || !open.isActive()) {
      return CompletableFuture.completedFuture(null);
    }
    CompletableFuture<Void> answer = new CompletableFuture<>();
    pinged.add(answer);
    open.writeAndFlush(new PingWebSocketFrame());
    return answer;
  }

  /** Tells the ending once, whatever comes first. */
  void end(int code, String says) {
    if (!ended) {
      ended = true;
      owner.closed(code, says);
    }
  }
}

package thinclick.server.net;

import io.netty.buffer.Unpooled;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandler;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.handler.ssl.OptionalSslHandler;
import io.netty.handler.ssl.SslContext;
import io.netty.handler.ssl.SslHandler;
import io.netty.util.ReferenceCountUtil;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Tells an encrypted line from a plain one by its first bytes, and refuses what is not taken. */
@SuppressWarnings("FutureReturnValueIgnored") // a close that fails is a closed channel
final class LineOpening extends OptionalSslHandler {
  private static final long HANDSHAKE_SECONDS = 5;
  private static final String ENCRYPTED_ONLY =
      "this host takes encrypted lines only (wss, https)\n";

  private final Lines lines;
  private final Strangers strangers;
  private final HostParts parts;

  LineOpening(SslContext encryption, Lines lines, Strangers strangers, HostParts parts) {
    super(encryption);
    this.lines = lines;
    this.strangers = strangers;
    this.parts = parts;
  }

  @Override
  protected SslHandler newSslHandler(ChannelHandlerContext context, SslContext encryption) {
    SslHandler made = encryption.newHandler(context.alloc());
    made.setHandshakeTimeout(HANDSHAKE_SECONDS, TimeUnit.SECONDS);
    if (!strangers.mayShakeHands(Remote.of(context), parts.clock().nanos())) {
      parts.meters().handshakeRefused();
      context.close();
    }
    return made;
  }

  @Override
  protected @Nullable ChannelHandler newNonSslHandler(ChannelHandlerContext context) {
    return lines.takesPlain(Remote.of(context)) ? null : new Refusal();
  }

  /** Answers whatever comes as HTTP would, since a conversation begins as HTTP too. */
  private static final class Refusal extends ChannelInboundHandlerAdapter {
    private boolean answered;

    @Override
    public void channelRead(ChannelHandlerContext context, Object bytes) {
      ReferenceCountUtil.release(bytes);
      if (!answered) {
        answered = true;
        String answer =
            "HTTP/1.1 426 Upgrade Required\r\nUpgrade: TLS/1.2\r\nConnection: close\r\n"
                + "Content-Type: text/plain; charset=utf-8\r\nContent-Length: "
                + ENCRYPTED_ONLY.length()
                + "\r\n\r\n"
                + ENCRYPTED_ONLY;
        context
            .writeAndFlush(Unpooled.copiedBuffer(answer, StandardCharsets.US_ASCII))
            .addListener(ChannelFutureListener.CLOSE);
      }
    }
  }
}

package thinclick.server.net;

import io.netty.buffer.ByteBuf;
import io.netty.buffer.Unpooled;
import io.netty.channel.ChannelFutureListener;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.SimpleChannelInboundHandler;
import io.netty.handler.codec.http.DefaultFullHttpResponse;
import io.netty.handler.codec.http.FullHttpRequest;
import io.netty.handler.codec.http.HttpHeaderNames;
import io.netty.handler.codec.http.HttpHeaderValues;
import io.netty.handler.codec.http.HttpMethod;
import io.netty.handler.codec.http.HttpResponseStatus;
import io.netty.handler.codec.http.HttpVersion;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import thinclick.protocol.message.MessageCodec;

/**
 * Plain HTTP on the same port: {@code GET /health} for everybody, {@code GET /metrics} and {@code
 * POST /drain} for this computer; a conversation is let through, all else is not found.
 */
final class HttpHandler extends SimpleChannelInboundHandler<FullHttpRequest> {
  private static final String TEXT = "text/plain; charset=utf-8";
  private static final String METRICS = "text/plain; version=0.0.4; charset=utf-8";

  private final HostParts parts;
  private final Rooms rooms;

  HttpHandler(HostParts parts, Rooms rooms) {
    this.parts = parts;
    this.rooms = rooms;
  }

  @Override
  protected void channelRead0(ChannelHandlerContext context, FullHttpRequest request) {
    boolean here = Remote.of(context).isLoopbackAddress();
    if (!request.decoderResult().isSuccess()) {
      answer(context, HttpResponseStatus.BAD_REQUEST, "not HTTP\n");
    } else if (request.method().equals(HttpMethod.POST) && request.uri().equals("/drain")) {
      drain(context, request, here);
    } else if (!request.method().equals(HttpMethod.GET)) {
      answer(context, HttpResponseStatus.METHOD_NOT_ALLOWED, "GET only\n");
    } else if (request.uri().equals(MessageCodec.PATH)
        && request
            .headers()
            .containsValue(HttpHeaderNames.UPGRADE, HttpHeaderValues.WEBSOCKET, true)) {
      context.fireChannelRead(request.retain());
    } else if (request.uri().equals("/health")) {
      String state = rooms.state();
      answer(
          context,
          state.equals("ok") ? HttpResponseStatus.OK : HttpResponseStatus.SERVICE_UNAVAILABLE,
          state + "\n");
    } else if (request.uri().equals("/metrics") && (here || parts.metricsToAll())) {
      // Written on another thread, since this one's rooms go by it.
      var unused =
          CompletableFuture.supplyAsync(parts.meters()::text)
              .thenAcceptAsync(
                  text -> answer(context, HttpResponseStatus.OK, METRICS, text),
                  context.executor());
    } else {
      answer(context, HttpResponseStatus.NOT_FOUND, "nothing here\n");
    }
  }

  /** A page in a browser on this computer comes from here too, but says where it is from. */
  private void drain(ChannelHandlerContext context, FullHttpRequest request, boolean here) {
    if (!here || request.headers().contains(HttpHeaderNames.ORIGIN)) {
      answer(context, HttpResponseStatus.NOT_FOUND, "nothing here\n");
      return;
    }
    rooms.drain();
    answer(context, HttpResponseStatus.ACCEPTED, "draining, rooms left: " + rooms.count() + "\n");
  }

  private static void answer(
      ChannelHandlerContext context, HttpResponseStatus status, String text) {
    answer(context, status, TEXT, text);
  }

  private static void answer(
      ChannelHandlerContext context, HttpResponseStatus status, String kind, String text) {
    ByteBuf body = Unpooled.copiedBuffer(text, StandardCharsets.UTF_8);
    DefaultFullHttpResponse response =
        new DefaultFullHttpResponse(HttpVersion.HTTP_1_1, status, body);
    response
        .headers()
        .set(HttpHeaderNames.CONTENT_TYPE, kind)
        .setInt(HttpHeaderNames.CONTENT_LENGTH, body.readableBytes())
        .set(HttpHeaderNames.CONNECTION, "close");
    context.writeAndFlush(response).addListener(ChannelFutureListener.CLOSE);
  }
}

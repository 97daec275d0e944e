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
import thinclick.protocol.message.MessageCodec;

/**
 * Plain HTTP on the same port: {@code /health}; a conversation is let through, all else is not
 * found.
 */
final class HttpHandler extends SimpleChannelInboundHandler<FullHttpRequest> {
  @Override
  protected void channelRead0(ChannelHandlerContext context, FullHttpRequest request) {
    if (!request.decoderResult().isSuccess()) {
      answer(context, HttpResponseStatus.BAD_REQUEST, "not HTTP\n");
    } else if (!request.method().equals(HttpMethod.GET)) {
      answer(context, HttpResponseStatus.METHOD_NOT_ALLOWED, "GET only\n");
    } else if (request.uri().equals(MessageCodec.PATH)
        && request
            .headers()
            .containsValue(HttpHeaderNames.UPGRADE, HttpHeaderValues.WEBSOCKET, true)) {
      context.fireChannelRead(request.retain());
    } else if (request.uri().equals("/health")) {
      answer(context, HttpResponseStatus.OK, "ok\n");
    } else {
      answer(context, HttpResponseStatus.NOT_FOUND, "nothing here\n");
    }
  }

  private static void answer(
      ChannelHandlerContext context, HttpResponseStatus status, String text) {
    ByteBuf body = Unpooled.copiedBuffer(text, StandardCharsets.UTF_8);
    DefaultFullHttpResponse response =
        new DefaultFullHttpResponse(HttpVersion.HTTP_1_1, status, body);
    response
        .headers()
        .set(HttpHeaderNames.CONTENT_TYPE, "text/plain; charset=utf-8")
        .setInt(HttpHeaderNames.CONTENT_LENGTH, body.readableBytes())
        .set(HttpHeaderNames.CONNECTION, "close");
    context.writeAndFlush(response).addListener(ChannelFutureListener.CLOSE);
  }
}

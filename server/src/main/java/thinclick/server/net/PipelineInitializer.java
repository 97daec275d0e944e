package thinclick.server.net;

import io.netty.channel.Channel;
import io.netty.channel.ChannelInitializer;
import io.netty.handler.codec.http.HttpObjectAggregator;
import io.netty.handler.codec.http.HttpServerCodec;

/** What every connection goes through, in order, with its limits. */
final class PipelineInitializer extends ChannelInitializer<Channel> {
  private static final int MAX_REQUEST_LINE = 1_024;
  private static final int MAX_HEADERS = 8_192;
  private static final int MAX_CHUNK = 4_096;
  private static final int MAX_BODY = 1_024;

  @Override
  protected void initChannel(Channel channel) {
    channel
        .pipeline()
        .addLast(new HttpServerCodec(MAX_REQUEST_LINE, MAX_HEADERS, MAX_CHUNK))
        .addLast(new HttpObjectAggregator(MAX_BODY))
        .addLast(new HttpHandler());
  }
}

package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.netty.bootstrap.Bootstrap;
import io.netty.bootstrap.ServerBootstrap;
import io.netty.buffer.ByteBuf;
import io.netty.buffer.ByteBufUtil;
import io.netty.buffer.Unpooled;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.embedded.EmbeddedChannel;
import io.netty.channel.local.LocalAddress;
import io.netty.channel.local.LocalChannel;
import io.netty.channel.local.LocalIoHandler;
import io.netty.channel.local.LocalServerChannel;
import io.netty.handler.codec.http.websocketx.WebSocket13FrameEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.TakeNews;

/** Frames on their way out: all of them, in order, and let go when the line is. */
class OutgoingTest {
  private static final int SEED = 5;

  private final Random random = new Random(SEED);
  private final EmbeddedChannel line = new EmbeddedChannel(new WebSocket13FrameEncoder(false));
  private final Connection connection = new Connection(line);

  @AfterEach
  void letGo() {
    line.finishAndReleaseAll();
  }

  private byte[] frame(int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return bytes;
  }

  /** Small ones mostly. */
  private byte[] anyFrame() {
    return frame(1 + random.nextInt(random.nextInt(20) == 0 ? 100_000 : 200));
  }

  private byte[] sent() {
    ByteBuf all = Unpooled.buffer();
    for (ByteBuf piece = line.readOutbound(); piece != null; piece = line.readOutbound()) {
      all.writeBytes(piece);
      piece.release();
    }
    byte[] bytes = new byte[all.readableBytes()];
    all.readBytes(bytes);
    return bytes;
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void everyFrameArrivesWholeAndInOrder(boolean onItsLoop) {
    EventLoopGroup loops = new MultiThreadIoEventLoopGroup(2, LocalIoHandler.newFactory());
    ByteBuf arrived = Unpooled.buffer();
    ByteBuf given = Unpooled.buffer();
    LocalAddress address = new LocalAddress(OutgoingTest.class);
    new ServerBootstrap()
        .group(loops)
        .channel(LocalServerChannel.class)
        .childHandler(new Collector(arrived))
        .bind(address)
        .syncUninterruptibly();
    Channel there =
        new Bootstrap()
            .group(loops)
            .channel(LocalChannel.class)
            .handler(new WebSocket13FrameEncoder(false))
            .connect(address)
            .syncUninterruptibly()
            .channel();
    Connection far = new Connection(there);
    Runnable saying =
        () -> {
          for (int i = 0; i < 2_000; i++) {
            byte[] frame = anyFrame();
            given.writeBytes(frame);
            far.write(frame, false);
            if (random.nextInt(7) == 0) {
              far.flush();
            }
          }
          far.flush();
        };

    if (onItsLoop) {
      there.eventLoop().submit(saying).syncUninterruptibly();
    } else {
      saying.run();
    }

    await().until(() -> size(arrived) == given.readableBytes());
    assertThat(arrived).as("seed " + SEED).isEqualTo(given);
    loops.shutdownGracefully(0, 1, TimeUnit.SECONDS).syncUninterruptibly();
  }

  private static int size(ByteBuf bytes) {
    synchronized (bytes) {
      return bytes.readableBytes();
    }
  }

  @Test
  void whatIsGatheredCountsAsNotTaken() {
    int sent = 0;
    byte[] frame = frame(1_000);
    while (connection.write(frame, true)) {
      sent++;
    }

    assertThat(sent).isEqualTo(Connection.LOW_MARK / 1_000 + 1);
    assertThat(connection.write(frame, false)).isTrue();
    connection.flush();
    assertThat(connection.write(frame, true)).isTrue();
    connection.flush();
    assertThat(sent()).hasSize((sent + 2) * 1_000);
  }

  @Test
  void goodbyeComesBehindAllThatWasSaidAndTheCloseFrameLast() {
    connection.send(new TakeNews.Stored("room-t1", 1));
    connection.write(Connection.encode(new TakeNews.Stored("room-t1", 2)), false);

    connection.close(CloseCode.REMOVED, "removed", null);

    assertThat(new String(sent(), StandardCharsets.ISO_8859_1))
        .matches("(?s).*\"throughSeq\":1.*\"throughSeq\":2.*\"goodbye\".*\u0088\u0009..removed");
  }

  @Test
  void pieceThatTheNetworkHasNotTakenIsNotWrittenOver() {
    byte[] first = frame(100);
    byte[] second = frame(100);
    connection.write(first, false);
    connection.flush();
    ByteBuf untaken = line.readOutbound();
    connection.write(second, false);
    connection.flush();

    assertThat(ByteBufUtil.getBytes(untaken)).isEqualTo(first);
    assertThat(sent()).isEqualTo(second);
    untaken.release();
  }

  @Test
  void lineThatIsGoneTakesNothing() {
    connection.write(frame(10), false);
    line.close();
    connection.over();
    connection.write(frame(20), false);
    connection.flush();

    assertThat(sent()).isEmpty();
  }

  /** Adds up what comes. */
  private static final class Collector extends ChannelInboundHandlerAdapter {
    private final ByteBuf all;

    Collector(ByteBuf all) {
      this.all = all;
    }

    @Override
    public boolean isSharable() {
      return true;
    }

    @Override
    public void channelRead(ChannelHandlerContext context, Object bytes) {
      ByteBuf piece = (ByteBuf) bytes;
      synchronized (all) {
        all.writeBytes(piece);
      }
      piece.release();
    }
  }
}

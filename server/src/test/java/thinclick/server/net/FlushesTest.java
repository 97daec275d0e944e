package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOutboundHandlerAdapter;
import io.netty.channel.embedded.EmbeddedChannel;
import io.netty.handler.codec.http.websocketx.WebSocket13FrameEncoder;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.TakeNews;

/** How many writes to the socket come of what is said, by a clock that the test moves. */
class FlushesTest {
  private final Sockets socket = new Sockets();
  private final EmbeddedChannel line =
      new EmbeddedChannel(socket, new WebSocket13FrameEncoder(false));
  private final Connection connection = new Connection(line);
  private final Flushes flushes = flushes();

  private int writesInTheTurn;

  private Flushes flushes() {
    line.freezeTime();
    return new Flushes(line.eventLoop());
  }

  @AfterEach
  void letGo() {
    line.finishAndReleaseAll();
  }

  private void queue() {
    connection.write(Connection.encode(new TakeNews.Stored("room-t1", 7)), false);
  }

  private void turn(Runnable work) {
    writesInTheTurn = -1;
    line.eventLoop().execute(work);
    line.runPendingTasks();
  }

  private void pass(long millis) {
    line.advanceTimeBy(millis, TimeUnit.MILLISECONDS);
  }

  @Test
  void whatComesWithinATurnGoesOutInOneWrite() {
    turn(
        () -> {
          queue(); // all before the first flush is asked for: here a write ends the turn
          queue();
          queue();
          for (int i = 0; i < 3; i++) {
            flushes.soon(connection);
            flushes.inTime();
          }
          writesInTheTurn = socket.writes;
        });

    assertThat(writesInTheTurn).isZero();
    assertThat(socket.writes).isEqualTo(1);
    assertThat(line.outboundMessages()).hasSize(1);
  }

  @Test
  void longTurnSaysWhatItHasBeforeItsEnd() {
    turn(
        () -> {
          queue();
          flushes.soon(connection);
          pass(Flushes.LONGEST_TURN_MILLIS + 1);

          flushes.inTime();
          writesInTheTurn = socket.writes;
        });

    assertThat(writesInTheTurn).isEqualTo(1);
  }

  @Test
  void acknowledgementGoesWithTheNextFrameOrInAWhile() {
    queue();
    flushes.late(connection);
    pass(Flushes.LATE_MILLIS - 1);
    line.runScheduledPendingTasks();
    assertThat(socket.writes).isZero();

    pass(1);
    line.runScheduledPendingTasks();

    assertThat(socket.writes).isEqualTo(1);
  }

  /** Counts what a socket would be told to write. */
  private static final class Sockets extends ChannelOutboundHandlerAdapter {
    private int writes;

    @Override
    public void flush(ChannelHandlerContext context) {
      writes++;
      context.flush();
    }
  }
}

package thinclick.server.net;

import io.netty.buffer.ByteBuf;
import io.netty.buffer.Unpooled;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOutboundBuffer;
import io.netty.util.concurrent.FastThreadLocal;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What is to go out on one line, gathered until the flush: to copy a hundred bytes costs far less
 * than an entry of its own in the channel's queue, and the network is handed one piece however many
 * frames there are.
 *
 * <p>Frames may come from any thread; those of one thread keep their order. All else is done on the
 * channel's loop.
 */
@SuppressWarnings("FutureReturnValueIgnored") // a write that fails ends with its channel
final class Outgoing {
  /** So much is handed on, flushed or not. */
  private static final int LARGEST_PIECE = 32 << 10;

  private static final int SPARE_BYTES = 16 << 10;

  /** What a socket takes at once has left its buffer by then: one buffer serves a whole loop. */
  private static final FastThreadLocal<ByteBuf> SPARE =
      new FastThreadLocal<>() {
        @Override
        protected ByteBuf initialValue() {
          return Unpooled.directBuffer(SPARE_BYTES, SPARE_BYTES);
        }

        @Override
        protected void onRemoval(ByteBuf spare) {
          spare.release();
        }
      };

  private final Channel channel;

  /** Bytes given by other threads that the loop has not come to yet. */
  private final AtomicLong onTheWay = new AtomicLong();

  private final List<byte[]> gathered = new ArrayList<>(2);
  private int gatheredBytes;
  private boolean over;

  Outgoing(Channel channel) {
    this.channel = channel;
  }

  /**
   * Bytes that the network has not taken yet, whether it was asked to or not; what was gathered
   * since the last flush counts on the channel's loop only.
   */
  long pendingBytes() {
    long queued = queuedBytes();
    return channel.eventLoop().inEventLoop() ? queued + gatheredBytes : queued + onTheWay.get();
  }

  private long queuedBytes() {
    ChannelOutboundBuffer queue = channel.unsafe().outboundBuffer();
    return queue == null ? 0 : queue.totalPendingWriteBytes();
  }

  /**
   * Queues a frame behind those that are there.
   *
   * @param past where in the pipeline a finished frame is written
   * @param frame not changed any more by whoever has it
   */
  void add(ChannelHandlerContext past, byte[] frame) {
    if (channel.eventLoop().inEventLoop()) {
      gather(past, frame);
      return;
    }
    onTheWay.addAndGet(frame.length);
    channel
        .eventLoop()
        .execute(
            () -> {
              onTheWay.addAndGet(-frame.length);
              gather(past, frame);
            });
  }

  private void gather(ChannelHandlerContext past, byte[] frame) {
    if (over) {
      return;
    }
    if (gatheredBytes + frame.length > LARGEST_PIECE) {
      handOn(past);
    }
    gathered.add(frame);
    gatheredBytes += frame.length;
  }

  private void handOn(ChannelHandlerContext past) {
    if (gathered.isEmpty()) {
      return;
    }
    ByteBuf piece = piece();
    for (byte[] frame : gathered) {
      piece.writeBytes(frame);
    }
    gathered.clear();
    gatheredBytes = 0;
    past.write(piece, channel.voidPromise());
  }

  /** Room for what is gathered: never more than it takes, behind what the network has not taken. */
  private ByteBuf piece() {
    if (gatheredBytes > SPARE_BYTES || queuedBytes() > 0) {
      return channel.alloc().directBuffer(gatheredBytes);
    }
    ByteBuf spare = SPARE.get();
    if (spare.refCnt() > 1) { // somebody reads slowly, and may keep it
      SPARE.remove();
      spare = SPARE.get();
    }
    return spare.clear().retain();
  }

  /** Hands on what was queued before by this thread, without a flush. */
  void handOnAll(ChannelHandlerContext past) {
    if (channel.eventLoop().inEventLoop()) {
      handOn(past);
    } else {
      channel.eventLoop().execute(() -> handOn(past));
    }
  }

  /** Sends what was queued before by this thread. */
  void flush(ChannelHandlerContext past) {
    if (channel.eventLoop().inEventLoop()) {
      handOn(past);
      past.flush();
    } else {
      channel
          .eventLoop()
          .execute(
              () -> {
                handOn(past);
                past.flush();
              });
    }
  }

  /** The line is gone, on its loop. */
  void over() {
    over = true;
    gathered.clear();
    gatheredBytes = 0;
  }
}

package thinclick.server.net;

import io.netty.buffer.ByteBuf;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelOutboundBuffer;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/**
 * What is to go out on one line, frame after frame in one buffer until the flush: a copy of a
 * hundred bytes costs far less than an entry of its own in the channel's queue, and the network is
 * handed one piece however many frames there are. Frames that are large are handed on as they are.
 *
 * <p>Frames may come from any thread; those of one thread keep their order. The buffer is the
 * channel's loop's.
 */
@SuppressWarnings("FutureReturnValueIgnored") // a write that fails ends with its channel
final class Outgoing {
  /** From this many bytes on a frame is not copied. */
  static final int LARGE = 4 << 10;

  /** The gathered are handed on when they are so many bytes, flushed or not. */
  private static final int LARGEST_PIECE = 32 << 10;

  private static final int SMALLEST_PIECE = 256;

  private final Channel channel;

  /** Bytes given by other threads that the loop has not come to yet. */
  private final AtomicLong onTheWay = new AtomicLong();

  private @Nullable ByteBuf gathered;
  private int lastPiece = SMALLEST_PIECE;
  private boolean over;

  Outgoing(Channel channel) {
    this.channel = channel;
  }

  /**
   * Bytes that the network has not taken yet, whether it was asked to or not; what was gathered
   * since the last flush counts on the channel's loop only.
   */
  long pendingBytes() {
    ChannelOutboundBuffer queued = channel.unsafe().outboundBuffer();
    long pending = queued == null ? 0 : queued.totalPendingWriteBytes();
    if (!channel.eventLoop().inEventLoop()) {
      return pending + onTheWay.get();
    }
    ByteBuf piece = gathered;
    return piece == null ? pending : pending + piece.readableBytes();
  }

  /**
   * Queues a frame behind those that are there.
   *
   * @param past where in the pipeline a finished frame is written
   * @param frame stays the caller's, unchanged
   */
  void add(ChannelHandlerContext past, ByteBuf frame) {
    if (channel.eventLoop().inEventLoop()) {
      gather(past, frame);
      return;
    }
    int length = frame.readableBytes();
    ByteBuf kept = frame.retainedDuplicate();
    onTheWay.addAndGet(length);
    channel
        .eventLoop()
        .execute(
            () -> {
              onTheWay.addAndGet(-length);
              gather(past, kept);
              kept.release();
            });
  }

  private void gather(ChannelHandlerContext past, ByteBuf frame) {
    int length = frame.readableBytes();
    ByteBuf piece = gathered;
    if (piece != null && piece.readableBytes() + length > LARGEST_PIECE) {
      handOn(past);
      piece = null;
    }
    if (over || length >= LARGE) {
      handOn(past);
      past.write(frame.retainedDuplicate(), channel.voidPromise());
      return;
    }
    if (piece == null) {
      piece = channel.alloc().directBuffer(Math.max(length, lastPiece));
      gathered = piece;
    }
    piece.writeBytes(frame, frame.readerIndex(), length);
  }

  private void handOn(ChannelHandlerContext past) {
    ByteBuf piece = gathered;
    if (piece != null) {
      gathered = null;
      lastPiece = Math.max(SMALLEST_PIECE, piece.readableBytes());
      past.write(piece, channel.voidPromise());
    }
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

  /** The line is gone, on its loop; what comes later is let go by the channel. */
  void over() {
    over = true;
    ByteBuf piece = gathered;
    if (piece != null) {
      gathered = null;
      piece.release();
    }
  }
}

package thinclick.server.load;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import org.HdrHistogram.Histogram;

/** One player of the load: sends attacks stamped with the intended instant, reads what comes. */
final class LoadLine {
  private static final int REMEMBERED = 1 << 12;
  private static final int LARGEST_FRAME = 300_000;

  private final SocketChannel channel;
  private final byte[] head;
  private final long[] intendedMicros = new long[REMEMBERED];
  private ByteBuffer in = ByteBuffer.allocate(8_192);
  private ByteBuffer unsent = ByteBuffer.allocate(0);
  private long sent;
  private long acknowledged;
  private long delivered;
  private boolean closed;
  private String closing = "without a word";

  /** Goes on with a line that is in its room; every attack is written as for the real server. */
  LoadLine(RawLine line, String takeId, Selector selector) {
    try {
      byte[] before = line.unread();
      in = ByteBuffer.allocate(Math.max(8_192, 2 * before.length)).put(before);
      channel = line.channel();
      channel.configureBlocking(false);
      channel.register(selector, SelectionKey.OP_READ, this);
    } catch (IOException problem) {
      throw new java.io.UncheckedIOException(problem);
    }
    head =
        ("{\"type\":\"attacks\",\"takeId\":\"" + takeId + "\",\"epoch\":1,\"firstSeq\":")
            .getBytes(StandardCharsets.US_ASCII);
  }

  long sent() {
    return sent;
  }

  long acknowledged() {
    return acknowledged;
  }

  long delivered() {
    return delivered;
  }

  boolean closed() {
    return closed;
  }

  /** How the server ended it. */
  String closing() {
    return closing;
  }

  /** Sends one attack whose instant is when it should have been sent. */
  void attack(long micros, ByteBuffer scratch) throws IOException {
    if (closed) {
      return;
    }
    sent++;
    intendedMicros[(int) (sent % REMEMBERED)] = micros;
    scratch.clear().position(8); // room for the frame's own head with an all-zero mask
    scratch.put(head);
    digits(scratch, sent);
    scratch.put(",\"attacks\":[{\"micros\":".getBytes(StandardCharsets.US_ASCII));
    digits(scratch, micros);
    scratch.put("}]}".getBytes(StandardCharsets.US_ASCII));
    int length = scratch.position() - 8;
    int begin = length < 126 ? 2 : 0;
    scratch.put(begin, (byte) (RawLine.FIN | RawLine.TEXT));
    if (length < 126) {
      scratch.put(3, (byte) (0x80 | length)).putInt(4, 0);
    } else {
      scratch.put(1, (byte) (0x80 | 126)).putShort(2, (short) length).putInt(4, 0);
    }
    scratch.flip().position(begin);
    write(scratch);
  }

  private static void digits(ByteBuffer to, long value) {
    long ten = 1;
    while (value / ten >= 10) {
      ten *= 10;
    }
    for (; ten > 0; ten /= 10) {
      to.put((byte) ('0' + value / ten % 10));
    }
  }

  private void write(ByteBuffer bytes) throws IOException {
    if (unsent.hasRemaining()) {
      channel.write(unsent);
    }
    if (!unsent.hasRemaining()) {
      channel.write(bytes);
    }
    if (bytes.hasRemaining()) {
      unsent =
          ByteBuffer.allocate(unsent.remaining() + bytes.remaining()).put(unsent).put(bytes).flip();
    }
  }

  /** Sends what the network had not taken; true where it still does not take all. */
  boolean push() throws IOException {
    if (!closed && unsent.hasRemaining()) {
      channel.write(unsent);
    }
    return !closed && unsent.hasRemaining();
  }

  /** Reads all that is there. */
  void read(long nowMicros, ByteBuffer shared, Histogram delivery, Histogram acknowledgement)
      throws IOException {
    if (unsent.hasRemaining()) {
      channel.write(unsent);
    }
    shared.clear();
    int count = channel.read(shared);
    if (count < 0) {
      closed = true;
      channel.close();
      return;
    }
    shared.flip();
    if (in.remaining() < shared.remaining()) {
      in = ByteBuffer.allocate(in.capacity() + shared.remaining()).put(in.flip());
    }
    in.put(shared).flip();
    while (frame(nowMicros, delivery, acknowledgement)) {
      // the next
    }
    in.compact();
  }

  private boolean frame(long nowMicros, Histogram delivery, Histogram acknowledgement)
      throws IOException {
    int at = in.position();
    if (in.remaining() < 2) {
      return false;
    }
    int opcode = in.get(at) & 0x0f;
    int length = in.get(at + 1) & 0x7f;
    int begin = at + 2;
    if (length == 126) {
      if (in.remaining() < 4) {
        return false;
      }
      length = in.getShort(at + 2) & 0xffff;
      begin = at + 4;
    } else if (length == 127) {
      if (in.remaining() < 10) {
        return false;
      }
      length = (int) Math.min(LARGEST_FRAME, in.getLong(at + 2));
      begin = at + 10;
    }
    int end = begin + length;
    if (in.limit() < end) {
      return false;
    }
    if (opcode == RawLine.PING) {
      write(ByteBuffer.wrap(RawLine.frame(RawLine.FIN | RawLine.PONG, new byte[0])));
    } else if (opcode == RawLine.CLOSE) {
      closed = true;
      byte[] says = new byte[length];
      in.get(begin, says);
      closing =
          new RawLine.Frame(opcode, says).closeCode()
              + new String(says, StandardCharsets.UTF_8).substring(2);
    } else if (in.get(begin + 9) == 'a' || in.get(begin + 9) == 'h') {
      delivered++;
      delivery.recordValue(Math.max(0, nowMicros - lastNumber(end)));
    } else if (in.get(begin + 9) == 's' && in.get(begin + 11) == 'o' && in.get(begin + 12) == 'r') {
      stored(lastNumber(end), nowMicros, acknowledgement);
    }
    in.position(end);
    return true;
  }

  private long lastNumber(int end) {
    int at = end - 1;
    while (in.get(at) < '0' || in.get(at) > '9') {
      at--;
    }
    long value = 0;
    for (long ten = 1; in.get(at) >= '0' && in.get(at) <= '9'; ten *= 10) {
      value += (in.get(at--) - '0') * ten;
    }
    return value;
  }

  private void stored(long through, long nowMicros, Histogram acknowledgement) {
    for (long seq = Math.max(acknowledged + 1, sent - REMEMBERED + 1); seq <= through; seq++) {
      acknowledgement.recordValue(
          Math.max(0, nowMicros - intendedMicros[(int) (seq % REMEMBERED)]));
    }
    acknowledged = Math.max(acknowledged, through);
  }
}

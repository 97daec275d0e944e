package thinclick.server.load;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketException;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.message.MessageCodec;

/**
 * A client of bare bytes: what no WebSocket library would send can be sent, and what the server
 * sends is seen as it is. Blocking; for tests, and for what a bench says before it measures.
 */
public final class RawLine implements AutoCloseable {
  public static final int CONTINUATION = 0;
  public static final int TEXT = 1;
  public static final int BINARY = 2;
  public static final int CLOSE = 8;
  public static final int PING = 9;
  public static final int PONG = 10;

  /** The bit that ends a message; the opcode stands beside it. */
  public static final int FIN = 0x80;

  private static final byte[] MASK = {0x12, 0x34, 0x56, 0x78};
  private static final int PATIENCE_MILLIS = 20_000;

  private final SocketChannel channel;
  private final DataInputStream in;
  private final OutputStream out;

  /** A frame as it came. */
  public record Frame(int first, byte[] payload) {
    public int opcode() {
      return first & 0x0f;
    }

    public boolean fin() {
      return (first & FIN) != 0;
    }

    public String text() {
      return new String(payload, StandardCharsets.UTF_8);
    }

    /** Of a close frame; 1005 where it has none (RFC 6455, 7.1.5). */
    public int closeCode() {
      return payload.length < 2 ? 1005 : ByteBuffer.wrap(payload).getShort() & 0xffff;
    }
  }

  private RawLine(SocketChannel channel) throws IOException {
    this.channel = channel;
    this.in =
        new DataInputStream(new BufferedInputStream(channel.socket().getInputStream(), 1 << 16));
    this.out = channel.socket().getOutputStream();
  }

  /** A bare line; nothing is asked for yet. */
  public static RawLine dial(int port) {
    return dial(InetAddress.getLoopbackAddress(), port);
  }

  /** The same from another of this machine's loopback addresses, as if from another computer. */
  static RawLine dial(InetAddress from, int port) {
    try {
      SocketChannel channel = SocketChannel.open();
      channel.bind(new InetSocketAddress(from, 0));
      channel.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      channel.socket().setTcpNoDelay(true);
      channel.socket().setSoTimeout(PATIENCE_MILLIS);
      return new RawLine(channel);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** A line on which the conversation has been asked for and granted. */
  public static RawLine connect(int port) {
    return connect(port, MessageCodec.PATH);
  }

  /** The same at another path. */
  public static RawLine connect(int port, String path) {
    return asked(dial(port), path, port);
  }

  /** A line from that address on which the conversation has been asked for and granted. */
  static RawLine connect(InetAddress from, int port) {
    return asked(dial(from, port), MessageCodec.PATH, port);
  }

  private static RawLine asked(RawLine line, String path, int port) {
    line.send(request(path, port).getBytes(StandardCharsets.US_ASCII));
    List<String> answer = line.head();
    if (!answer.get(0).contains(" 101 ")) {
      throw new AssertionError("expected 101, found " + answer);
    }
    return line;
  }

  /** The opening handshake (RFC 6455, 1.3, with its own example of a key). */
  public static String request(String path, int port) {
    return "GET "
        + path
        + " HTTP/1.1\r\nHost: 127.0.0.1:"
        + port
        + "\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
        + "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n\r\n";
  }

  /** The lines of an HTTP answer up to the empty one. */
  public List<String> head() {
    List<String> lines = new ArrayList<>();
    try {
      for (String line = line(); !line.isEmpty(); line = line()) {
        lines.add(line);
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    return lines;
  }

  private String line() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int next = in.readUnsignedByte(); next != '\n'; next = in.readUnsignedByte()) {
      if (next != '\r') {
        line.write(next);
      }
    }
    return line.toString(StandardCharsets.US_ASCII);
  }

  // ------------------------------------------------------------------ sending

  public void send(byte[] bytes) {
    try {
      out.write(bytes);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  public void sendText(String text) {
    send(frame(FIN | TEXT, text.getBytes(StandardCharsets.UTF_8)));
  }

  public void sendFrame(int first, byte[] payload) {
    send(frame(first, payload));
  }

  /** A frame as a client must send it, masked. */
  public static byte[] frame(int first, byte[] payload) {
    byte[] bytes = new byte[headLength(payload.length) + MASK.length + payload.length];
    ByteBuffer frame = ByteBuffer.wrap(bytes);
    head(frame, first, payload.length, 0x80);
    frame.put(MASK);
    for (int i = 0; i < payload.length; i++) {
      frame.put((byte) (payload[i] ^ MASK[i % MASK.length]));
    }
    return bytes;
  }

  /** A frame as only a server may send it. */
  public static byte[] unmasked(int first, byte[] payload) {
    byte[] bytes = new byte[headLength(payload.length) + payload.length];
    ByteBuffer frame = ByteBuffer.wrap(bytes);
    head(frame, first, payload.length, 0);
    frame.put(payload);
    return bytes;
  }

  private static int headLength(int length) {
    return length < 126 ? 2 : length < 65_536 ? 4 : 10;
  }

  private static void head(ByteBuffer frame, int first, int length, int maskBit) {
    frame.put((byte) first);
    if (length < 126) {
      frame.put((byte) (maskBit | length));
    } else if (length < 65_536) {
      frame.put((byte) (maskBit | 126)).putShort((short) length);
    } else {
      frame.put((byte) (maskBit | 127)).putLong(length);
    }
  }

  // ------------------------------------------------------------------ receiving

  /**
   * The next frame.
   *
   * @throws EOFException where the line has ended, in an {@link UncheckedIOException}
   */
  public Frame read() {
    try {
      int first = in.readUnsignedByte();
      int second = in.readUnsignedByte();
      if ((second & 0x80) != 0) {
        throw new AssertionError("a server masked its frame");
      }
      long length = second & 0x7f;
      if (length == 126) {
        length = in.readUnsignedShort();
      } else if (length == 127) {
        length = in.readLong();
      }
      return new Frame(first, in.readNBytes((int) length));
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** The next text whose type is that; pings are answered, other texts left unread for ever. */
  public String expect(String type) {
    String start = "{\"type\":\"" + type + "\"";
    while (true) {
      Frame frame = read();
      if (frame.opcode() == PING) {
        sendFrame(FIN | PONG, frame.payload());
      } else if (frame.opcode() == CLOSE) {
        throw new AssertionError(
            "expected " + type + ", closed " + frame.closeCode() + " " + frame.text());
      } else if (frame.text().startsWith(start)) {
        return frame.text();
      }
    }
  }

  /** The code the server closes with, whatever it says before. */
  public int closeCode() {
    while (true) {
      Frame frame = read();
      if (frame.opcode() == CLOSE) {
        return frame.closeCode();
      }
    }
  }

  /** True once nothing more can come. */
  public boolean ended() {
    try {
      while (in.read() >= 0) {
        // what was on its way
      }
      return true;
    } catch (SocketException reset) {
      return true;
    } catch (IOException problem) {
      return false;
    }
  }

  /** The channel itself, for those who go on with it in their own way. */
  public SocketChannel channel() {
    return channel;
  }

  /** What has come and was not read yet. */
  public byte[] unread() {
    try {
      return in.readNBytes(in.available());
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }
}

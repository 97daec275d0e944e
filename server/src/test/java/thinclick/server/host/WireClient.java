package thinclick.server.host;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;

/**
 * A client over a real socket, by the JDK's own WebSocket; shares nothing with the server's edge.
 */
final class WireClient implements WebSocket.Listener, AutoCloseable {
  private static final long PATIENCE_SECONDS = 20;
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  private final LinkedBlockingQueue<ServerMessage> incoming = new LinkedBlockingQueue<>();
  private final List<ServerMessage> skipped = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();
  private final CompletableFuture<Integer> closeCode = new CompletableFuture<>();
  private WebSocket socket;

  static WireClient connect(int port) {
    return connect(port, List.of());
  }

  /** With headers: name, value, name, value ... */
  static WireClient connect(int port, List<String> headers) {
    WireClient client = new WireClient();
    WebSocket.Builder builder = HTTP.newWebSocketBuilder().connectTimeout(Duration.ofSeconds(20));
    for (int i = 0; i < headers.size(); i += 2) {
      builder.header(headers.get(i), headers.get(i + 1));
    }
    client.socket =
        builder.buildAsync(URI.create("ws://127.0.0.1:" + port + MessageCodec.PATH), client).join();
    return client;
  }

  void send(ClientMessage message) {
    sendText(MessageCodec.write(message));
  }

  void sendText(String json) {
    socket.sendText(json, true).join();
  }

  void sendBinary(byte[] bytes) {
    socket.sendBinary(ByteBuffer.wrap(bytes), true).join();
  }

  /** The next message of that kind; others before it are kept for later. */
  <T extends ServerMessage> T expect(Class<T> kind) {
    for (ServerMessage seen : skipped) {
      if (kind.isInstance(seen)) {
        skipped.remove(seen);
        return kind.cast(seen);
      }
    }
    while (true) {
      ServerMessage next = poll(PATIENCE_SECONDS);
      if (next == null) {
        throw new AssertionError(
            "expected "
                + kind.getSimpleName()
                + ", found only "
                + skipped
                + ", closed "
                + closeCode);
      }
      if (kind.isInstance(next)) {
        return kind.cast(next);
      }
      skipped.add(next);
    }
  }

  /** Everything of that kind that has come so far. */
  <T extends ServerMessage> List<T> all(Class<T> kind) {
    for (ServerMessage next = incoming.poll(); next != null; next = incoming.poll()) {
      skipped.add(next);
    }
    return skipped.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private ServerMessage poll(long seconds) {
    try {
      return incoming.poll(seconds, TimeUnit.SECONDS);
    } catch (InterruptedException stopped) {
      throw new AssertionError(stopped);
    }
  }

  int closeCode() {
    try {
      return closeCode.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (Exception open) {
      throw new AssertionError("expected to be closed, found open; received " + skipped, open);
    }
  }

  boolean open() {
    return !closeCode.isDone();
  }

  /** Cuts the line without a close frame. */
  void cut() {
    socket.abort();
  }

  @Override
  public CompletionStage<?> onText(WebSocket from, CharSequence part, boolean last) {
    text.append(part);
    if (last) {
      incoming.add(MessageCodec.readServer(text.toString()));
      text.setLength(0);
    }
    from.request(1);
    return null;
  }

  @Override
  public CompletionStage<?> onClose(WebSocket from, int code, String reason) {
    closeCode.complete(code);
    return null;
  }

  @Override
  public void onError(WebSocket from, Throwable problem) {
    closeCode.complete(1006);
  }

  @Override
  public void close() {
    socket.abort();
  }
}

package thinclick.server.host;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.message.MessageCodec;

/**
 * A host that calls itself and says what is no message: so the way of a stranger from the port to
 * the refusal has been gone before the first stranger comes. Plain, as this computer alone may; on
 * a host that takes no plain lines nothing comes of it.
 */
final class OwnCalls {
  private static final Logger LOG = LoggerFactory.getLogger(OwnCalls.class);
  private static final int PATIENCE_MILLIS = 2_000;
  private static final String GREETING =
      "GET "
          + MessageCodec.PATH
          + " HTTP/1.1\r\nHost: localhost\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
          + "Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n\r\n";

  /** A final text frame of one masked byte, an opening brace (RFC 6455, 5.2). */
  private static final byte[] NO_MESSAGE = {(byte) 0x81, (byte) 0x81, 0, 0, 0, 0, '{'};

  private OwnCalls() {}

  /** So many calls, one after another; ends with the first that is not answered. */
  static void call(int port, int times) {
    try {
      for (int i = 0; i < times; i++) {
        call(port);
      }
    } catch (IOException unanswered) {
      LOG.debug("this host does not answer its own plain call: {}", unanswered.toString());
    }
  }

  private static void call(int port) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.setSoTimeout(PATIENCE_MILLIS);
      OutputStream out = socket.getOutputStream();
      out.write(GREETING.getBytes(StandardCharsets.US_ASCII));
      out.write(NO_MESSAGE);
      socket.getInputStream().readAllBytes();
    }
  }
}

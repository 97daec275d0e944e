package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.ClientMessage.Role;

class LinkLoopTest {
  private static final int PATIENCE_MILLIS = 20_000;

  @Test
  void linksThatAreOpenAreCutWithTheirLoop() throws IOException {
    try (ServerSocket host = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
      RoomAddress address = RoomAddress.local(host.getLocalPort());
      for (int round = 0; round < 20; round++) {
        LinkLoop loop = LinkLoop.start();
        RoomLink.join(
            LinkOptions.on(loop), address, "balumi", "Mina", Role.PLAYER, new RoomListener() {});
        try (Socket line = host.accept()) {
          line.setSoTimeout(PATIENCE_MILLIS);
          assertThat(line.getInputStream().read()).isEqualTo('G');
          loop.heard().join(); // the loop is on its way back from that turn
          loop.close();
          assertThat(ends(line)).as("round %d", round).isTrue();
        }
      }
    }
  }

  private static boolean ends(Socket line) throws IOException {
    try {
      line.getInputStream().readAllBytes();
      return true;
    } catch (SocketException reset) {
      return true;
    }
  }
}

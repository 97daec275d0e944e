package thinclick.client.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.MulticastSocket;
import java.net.NetworkInterface;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.window.session.Session;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** Hosts found by what they say in the network, over real multicast where there is any. */
class HostFinderTest {
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  @TempDir Path folder;

  @BeforeAll
  static void networkCarriesMulticast() throws IOException {
    List<InetAddress> networks = HostFinder.networks();
    assumeTrue(!networks.isEmpty(), "no network card of this computer carries multicast");
    assumeTrue(heardBySelf(networks.get(0)), "the network does not bring multicast back");
  }

  /** Sends a datagram to a group of one's own choosing (RFC 2365, local scope) and listens. */
  private static boolean heardBySelf(InetAddress from) throws IOException {
    InetSocketAddress group = new InetSocketAddress("239.255.77.20", 0);
    NetworkInterface card = NetworkInterface.getByInetAddress(from);
    try (MulticastSocket socket = new MulticastSocket(0)) {
      socket.setSoTimeout(1_000);
      socket.setNetworkInterface(card);
      socket.joinGroup(group, card);
      byte[] word = {7, 4, 2, 0};
      socket.send(new DatagramPacket(word, word.length, group.getAddress(), socket.getLocalPort()));
      socket.receive(new DatagramPacket(new byte[4], 4));
      return true;
    } catch (IOException silent) {
      return false;
    }
  }

  private RehearsalHost announced(String name) {
    return RehearsalHost.start(
        HostOptions.local(folder.resolve("room.db")).at("0.0.0.0", 0).announcedAs(name));
  }

  @Test
  void hostIsFoundUnderItsName() {
    List<List<FoundHost>> told = new CopyOnWriteArrayList<>();
    String name = "Band room " + ProcessHandle.current().pid();
    try (RehearsalHost host = announced(name);
        HostFinder finder = HostFinder.start(told::add)) {
      await().atMost(PATIENCE).until(() -> named(finder.found(), name) != null);
      FoundHost found = named(finder.found(), name);

      assertThat(found.address().encrypted()).isTrue();
      assertThat(found.address().pin()).as("nobody vouches for what is merely said").isNull();
      assertThat(found.address().said())
          .isEqualTo(HostFinder.networks().get(0).getHostAddress() + ":" + host.port());
      assertThat(told).anyMatch(list -> named(list, name) != null);
    }
  }

  @Test
  void roomOpenedInAWindowForOthersIsFoundTheSameWay() throws Exception {
    ExecutorService windowThread = Executors.newSingleThreadExecutor();
    Session session = new Session(windowThread, MonotonicClock.SYSTEM, folder);
    try (HostFinder finder = HostFinder.start(list -> {})) {
      windowThread.submit(() -> session.openHere("Frau Ott", true)).get();
      await().atMost(PATIENCE).until(() -> session.state().inside());
      String port = ":" + session.hosting().port();

      await()
          .atMost(PATIENCE)
          .until(
              () -> finder.found().stream().anyMatch(host -> host.address().said().endsWith(port)));
      assertThat(finder.found())
          .as("nobody's name is told")
          .noneMatch(host -> host.name().contains("Ott"));
    } finally {
      windowThread.submit(session::close).get();
      windowThread.shutdown();
    }
  }

  @Test
  @Tag("long")
  void hostThatClosedIsFoundNoMore() {
    String name = "Cellar " + ProcessHandle.current().pid();
    try (HostFinder finder = HostFinder.start(list -> {})) {
      try (RehearsalHost host = announced(name)) {
        await().atMost(PATIENCE).until(() -> named(finder.found(), name) != null);
        assertThat(host.encrypted()).isTrue();
      }
      await().atMost(PATIENCE).until(() -> named(finder.found(), name) == null);
    }
  }

  private static FoundHost named(List<FoundHost> hosts, String name) {
    return hosts.stream().filter(host -> host.name().equals(name)).findFirst().orElse(null);
  }
}

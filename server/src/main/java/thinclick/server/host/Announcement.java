package thinclick.server.host;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import javax.jmdns.JmDNS;
import javax.jmdns.ServiceInfo;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.invite.HostNotice;
import thinclick.protocol.time.Daemon;

/**
 * Says in the local network that there is a host, from a thread of its own: multicast DNS waits for
 * objections before it says anything, and nobody should wait for that.
 */
final class Announcement implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Announcement.class);
  private static final long LAST_WORDS_MILLIS = 1_500;

  private final List<JmDNS> speaking = new ArrayList<>(); // on the thread only
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(Daemon.called("thinclick-announce"));

  private Announcement() {}

  /** Null where there is nobody to tell, or nothing is to be told. */
  static @Nullable Announcement of(Reach reach, int port, boolean encrypted) {
    String called = reach.called();
    InetAddress bound = Threshold.resolved(reach.host());
    if (called == null || bound.isLoopbackAddress()) {
      return null;
    }
    Announcement made = new Announcement();
    List<InetAddress> from =
        Addresses.up()
            .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
            .filter(address -> bound.isAnyLocalAddress() || bound.equals(address))
            .toList();
    for (InetAddress address : from) {
      HostNotice notice = new HostNotice(called, address.getHostAddress(), port, !encrypted);
      made.thread.execute(() -> made.say(address, notice));
    }
    return made;
  }

  private void say(InetAddress from, HostNotice notice) {
    try {
      // Under a name of its own, so that the computer's, often a person's, is not told.
      JmDNS speaker = JmDNS.create(from, "thinclick-" + notice.port());
      speaking.add(speaker);
      speaker.registerService(
          ServiceInfo.create(HostNotice.KIND, notice.name(), notice.port(), 0, 0, notice.text()));
      LOG.info("announced in the network of {}", from.getHostAddress());
    } catch (IOException problem) {
      LOG.warn("not announced in the network of {}: {}", from.getHostAddress(), problem.toString());
    }
  }

  /** Takes the word back; what takes longer than that goes on by itself. */
  @Override
  public void close() {
    thread.execute(
        () -> {
          for (JmDNS each : speaking) {
            try {
              each.close();
            } catch (IOException gone) {
              LOG.debug("an announcement was not taken back: {}", gone.toString());
            }
          }
        });
    thread.shutdown();
    try {
      if (!thread.awaitTermination(LAST_WORDS_MILLIS, TimeUnit.MILLISECONDS)) {
        LOG.debug("the network is still being told that the host goes");
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}

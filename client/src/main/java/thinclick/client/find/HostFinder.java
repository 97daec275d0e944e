package thinclick.client.find;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import javax.jmdns.JmDNS;
import javax.jmdns.ServiceEvent;
import javax.jmdns.ServiceInfo;
import javax.jmdns.ServiceListener;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.RoomAddress;
import thinclick.protocol.invite.HostNotice;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.time.Daemon;

/**
 * Listens for hosts in the local network until it is closed. It never blocks its caller; networks
 * that allow no multicast show as nothing found.
 */
public final class HostFinder implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(HostFinder.class);

  private final Consumer<List<FoundHost>> changed;
  private final Map<Heard, FoundHost> heard = new ConcurrentHashMap<>();
  private final List<JmDNS> listening = new ArrayList<>(); // on the thread only
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(Daemon.called("host-finder"));
  private volatile boolean closed;

  /** Two hosts may be called the same in two networks. */
  private record Heard(InetAddress network, String name) {}

  private HostFinder(Consumer<List<FoundHost>> changed) {
    this.changed = changed;
  }

  /**
   * Begins to listen in every network that this computer is in.
   *
   * @param changed told the whole list, by name, whenever it changes; from threads of the finder's
   */
  public static HostFinder start(Consumer<List<FoundHost>> changed) {
    HostFinder made = new HostFinder(changed);
    made.thread.execute(() -> networks().forEach(made::listen));
    return made;
  }

  /** What has been found by now, by name; of those called the same by address. */
  public List<FoundHost> found() {
    return heard.values().stream()
        .distinct()
        .sorted(Comparator.comparing(FoundHost::name).thenComparing(host -> host.address().said()))
        .toList();
  }

  private void listen(InetAddress address) {
    if (closed) {
      return;
    }
    try {
      JmDNS listener = JmDNS.create(address, "thinclick-finder");
      listening.add(listener);
      listener.addServiceListener(HostNotice.KIND, new Ear(address));
    } catch (IOException problem) {
      LOG.info("no hosts are looked for at {}: {}", address.getHostAddress(), problem.toString());
    }
  }

  /** This computer's numbers of version 4 in networks that carry multicast. */
  static List<InetAddress> networks() {
    List<InetAddress> found = new ArrayList<>();
    try {
      for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        if (each.isUp() && !each.isLoopback() && each.supportsMulticast()) {
          Collections.list(each.getInetAddresses()).stream()
              .filter(address -> address instanceof Inet4Address)
              .forEach(found::add);
        }
      }
    } catch (SocketException unreadable) {
      LOG.info("no hosts are looked for: {}", unreadable.toString());
    }
    return found;
  }

  private final class Ear implements ServiceListener {
    private final InetAddress network;

    Ear(InetAddress network) {
      this.network = network;
    }

    @Override
    public void serviceAdded(ServiceEvent event) {
      event.getDNS().requestServiceInfo(event.getType(), event.getName());
    }

    @Override
    public void serviceResolved(ServiceEvent event) {
      ServiceInfo info = event.getInfo();
      Inet4Address[] numbers = info.getInet4Addresses();
      if (numbers.length == 0) {
        return;
      }
      try {
        HostNotice notice =
            HostNotice.of(
                event.getName(),
                numbers[0].getHostAddress(),
                info.getPort(),
                info.getPropertyString(HostNotice.lineKey()));
        FoundHost host = new FoundHost(notice.name(), RoomAddress.of(notice.link()));
        if (!host.equals(heard.put(new Heard(network, event.getName()), host))) {
          tell();
        }
      } catch (BadInput unlike) {
        LOG.debug("something that calls itself a host: {}", unlike.getMessage());
      }
    }

    @Override
    public void serviceRemoved(ServiceEvent event) {
      if (heard.remove(new Heard(network, event.getName())) != null) {
        tell();
      }
    }
  }

  private void tell() {
    if (!closed) {
      changed.accept(found());
    }
  }

  /** Stops listening; returns at once, and nothing is told any more. */
  @Override
  public void close() {
    closed = true;
    thread.execute(
        () -> {
          for (JmDNS each : listening) {
            try {
              each.close();
            } catch (IOException gone) {
              LOG.debug("a finder was not closed: {}", gone.toString());
            }
          }
        });
    thread.shutdown();
  }
}

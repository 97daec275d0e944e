package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.List;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.RoomAddress;
import thinclick.client.standin.Manner;
import thinclick.client.standin.StandIn;

/** The stand-ins that this window has brought into its room; they leave with it. */
final class Bench implements AutoCloseable {
  private static final long SEED_STEP = 7_919;

  private final LinkLoop loop;
  private final List<StandIn> standIns = new ArrayList<>();

  Bench(LinkLoop loop) {
    this.loop = loop;
  }

  /** Brings one in. */
  void bring(RoomAddress address, String word, String name, Manner manner) {
    long seed = SEED_STEP * (standIns.size() + 1L);
    standIns.add(StandIn.join(loop, address, word, name, manner.timing(), manner::slip, seed));
  }

  @Override
  public void close() {
    standIns.forEach(StandIn::close);
    standIns.clear();
  }
}

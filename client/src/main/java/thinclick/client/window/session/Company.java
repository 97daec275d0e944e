package thinclick.client.window.session;

import java.util.List;
import thinclick.client.standin.Manner;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.Check;

/**
 * What is practised alone, and with whom.
 *
 * @param drill from the stock
 * @param tempo beats a minute within the drill's range
 * @param ownPlace which chair the player takes, from 0, at most as many as there are stand-ins
 * @param standIns how each stand-in plays, in the order of the chairs that are left
 */
public record Company(Drill drill, double tempo, int ownPlace, List<Manner> standIns) {
  /** The most stand-ins that come in; more would be hard to hear apart. */
  public static final int MOST = 7;

  public Company {
    Check.present("drill", drill);
    Check.range("tempo", tempo, drill.tempo().from(), drill.tempo().to());
    standIns = Check.list("standIns", standIns);
    Check.size("standIns", standIns, 0, MOST);
    Check.range("ownPlace", ownPlace, 0L, standIns.size());
  }
}

package thinclick.client.link;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * How a link is made.
 *
 * @param loop the thread and the clock it lives on
 * @param journalFolder where attacks that are not yet acknowledged are kept in a file; null keeps
 *     them in memory only
 * @param knownHosts the file that remembers the certificates of hosts met by their address alone;
 *     null: such hosts must be known to an authority
 * @param hostKey what a host may ask for before it opens a room; null where it asks for nothing
 * @param clockOf another link of this computer to the same host, whose clock is shared; null where
 *     this one finds its own
 * @param standIn true for a simulated player, who is always marked as one
 */
public record LinkOptions(
    LinkLoop loop,
    @Nullable Path journalFolder,
    @Nullable Path knownHosts,
    @Nullable String hostKey,
    @Nullable RoomLink clockOf,
    boolean standIn) {

  /** A person's link without a journal file. */
  public static LinkOptions on(LinkLoop loop) {
    return new LinkOptions(loop, null, null, null, null, false);
  }

  /** The same with a journal file. */
  public LinkOptions withJournal(Path folder) {
    return new LinkOptions(loop, folder, knownHosts, hostKey, clockOf, standIn);
  }

  /** The same with a memory for hosts met by their address. */
  public LinkOptions rememberingHosts(Path file) {
    return new LinkOptions(loop, journalFolder, file, hostKey, clockOf, standIn);
  }

  /** The same with the host's key. */
  public LinkOptions withHostKey(String key) {
    return new LinkOptions(loop, journalFolder, knownHosts, key, clockOf, standIn);
  }

  /** The same for a further chair at this computer, on the clock that {@code other} has found. */
  public LinkOptions sharingClockOf(RoomLink other) {
    return new LinkOptions(loop, journalFolder, knownHosts, hostKey, other, standIn);
  }

  /** The same for a simulated player. */
  public LinkOptions asStandIn() {
    return new LinkOptions(loop, journalFolder, knownHosts, hostKey, clockOf, true);
  }
}

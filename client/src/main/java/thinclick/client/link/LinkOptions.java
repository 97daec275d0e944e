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
 * @param standIn true for a simulated player, who is always marked as one
 */
public record LinkOptions(
    LinkLoop loop,
    @Nullable Path journalFolder,
    @Nullable Path knownHosts,
    @Nullable String hostKey,
    boolean standIn) {

  /** A person's link without a journal file. */
  public static LinkOptions on(LinkLoop loop) {
    return new LinkOptions(loop, null, null, null, false);
  }

  /** The same with a journal file. */
  public LinkOptions withJournal(Path folder) {
    return new LinkOptions(loop, folder, knownHosts, hostKey, standIn);
  }

  /** The same with a memory for hosts met by their address. */
  public LinkOptions rememberingHosts(Path file) {
    return new LinkOptions(loop, journalFolder, file, hostKey, standIn);
  }

  /** The same with the host's key. */
  public LinkOptions withHostKey(String key) {
    return new LinkOptions(loop, journalFolder, knownHosts, key, standIn);
  }

  /** The same for a simulated player. */
  public LinkOptions asStandIn() {
    return new LinkOptions(loop, journalFolder, knownHosts, hostKey, true);
  }
}

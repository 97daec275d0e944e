package thinclick.client.link;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * How a link is made.
 *
 * @param loop the thread it lives on
 * @param time the clock it lives by
 * @param journalFolder where attacks that are not yet acknowledged are kept in a file; null keeps
 *     them in memory only
 * @param hostKey what a host may ask for before it opens a room; null where it asks for nothing
 */
public record LinkOptions(
    LinkLoop loop, LinkTime time, @Nullable Path journalFolder, @Nullable String hostKey) {

  /** On the loop's own clock, without a journal file. */
  public static LinkOptions on(LinkLoop loop) {
    return new LinkOptions(loop, loop.time(), null, null);
  }

  /** The same with a journal file. */
  public LinkOptions withJournal(Path folder) {
    return new LinkOptions(loop, time, folder, hostKey);
  }

  /** The same by another clock, for tests. */
  public LinkOptions withTime(LinkTime other) {
    return new LinkOptions(loop, other, journalFolder, hostKey);
  }

  /** The same with the host's key. */
  public LinkOptions withHostKey(String key) {
    return new LinkOptions(loop, time, journalFolder, key);
  }
}

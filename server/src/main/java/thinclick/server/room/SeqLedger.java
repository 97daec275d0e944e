package thinclick.server.room;

import java.util.TreeSet;

/** Which numbers of one player's attacks in one take are on the disk. */
final class SeqLedger {
  private final TreeSet<Long> beyond = new TreeSet<>();
  private long through;
  private long seen;

  /** Numbers from {@code first} to {@code last} are on the disk. */
  void stored(long first, long last) {
    if (first <= through + 1) {
      through = Math.max(through, last);
    } else {
      for (long seq = first; seq <= last; seq++) {
        beyond.add(seq);
      }
    }
    while (!beyond.isEmpty() && beyond.first() <= through + 1) {
      through = Math.max(through, beyond.first());
      beyond.remove(beyond.first());
    }
    seen = Math.max(seen, last);
  }

  /** A number has arrived; true where none so high had before. */
  boolean arrived(long seq) {
    boolean first = seq > seen;
    seen = Math.max(seen, seq);
    return first;
  }

  /** Everything from 1 to this number is on the disk; 0 for nothing. */
  long through() {
    return through;
  }
}

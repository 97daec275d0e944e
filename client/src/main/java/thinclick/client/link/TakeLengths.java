package thinclick.client.link;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.TakeMessage.AttackLength;
import thinclick.protocol.message.TakeMessage.Lengths;

/**
 * How long the attacks of one take were held, as far as the server has not said that it stored it.
 * A length goes out once its attack is stored, and stays until it is stored itself.
 */
final class TakeLengths {
  private static final int BATCH = 64;

  private final String takeId;
  private final long epoch;
  private final NavigableMap<Long, Double> unstored = new TreeMap<>();
  private final Set<Long> sent = new HashSet<>();

  TakeLengths(String takeId, long epoch) {
    this.takeId = takeId;
    this.epoch = epoch;
  }

  /** An attack was released; answers the message that says so, for the journal. */
  Lengths add(long seq, double lengthMillis) {
    unstored.putIfAbsent(seq, lengthMillis);
    return new Lengths(takeId, epoch, List.of(new AttackLength(seq, lengthMillis)));
  }

  /** An earlier run of the program left this one. */
  void restore(AttackLength left) {
    unstored.putIfAbsent(left.seq(), left.lengthMillis());
  }

  void stored(List<Long> seqs) {
    unstored.keySet().removeAll(seqs);
    seqs.forEach(sent::remove);
  }

  /** The line was cut: whatever is not stored is sent again. */
  void rewind() {
    sent.clear();
  }

  /** The server cannot keep them. */
  void giveUp() {
    unstored.clear();
    sent.clear();
  }

  /** The next message to send, of attacks up to a number; null where there is none. */
  @Nullable Lengths nextBatch(long storedThrough) {
    List<AttackLength> items = new ArrayList<>();
    for (Map.Entry<Long, Double> one : unstored.headMap(storedThrough, true).entrySet()) {
      if (items.size() < BATCH && sent.add(one.getKey())) {
        items.add(new AttackLength(one.getKey(), one.getValue()));
      }
    }
    return items.isEmpty() ? null : new Lengths(takeId, epoch, items);
  }

  boolean inFlight() {
    return !sent.isEmpty();
  }

  boolean isEmpty() {
    return unstored.isEmpty();
  }

  /** How many attacks up to a number want their length stored. */
  int waiting(long storedThrough) {
    return unstored.headMap(storedThrough, true).size();
  }
}

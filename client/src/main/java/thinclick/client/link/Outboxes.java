package thinclick.client.link;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.Lengths;
import thinclick.protocol.message.TakeMessage.PlayedThrough;
import thinclick.protocol.message.TakeMessage.WireAttack;

/** The takes whose attacks are not all stored, the running one last. Lives on the link's thread. */
final class Outboxes {
  /** More are not held down at once by anybody; what is beyond was released unseen. */
  private static final int MOST_HELD = 64;

  private final Map<String, TakeOutbox> takes = new LinkedHashMap<>();
  private final Map<PlayedAttack, Held> held = new LinkedHashMap<>();
  private @Nullable TakeOutbox current;
  private boolean lengthsTaken = true;

  /** An attack that has not been released yet. */
  private record Held(TakeOutbox take, long seq) {}

  /** A take was announced: from now on attacks belong to it. */
  void begin(String takeId, long epoch, long storedThrough) {
    takes.values().removeIf(TakeOutbox::settled);
    held.values().removeIf(one -> !one.take().takeId().equals(takeId));
    current = takes.computeIfAbsent(takeId, id -> new TakeOutbox(id, epoch, storedThrough));
    current.stored(storedThrough);
  }

  /** Takes an attack into the running take; null where none runs or it is finished. */
  @Nullable Attacks add(WireAttack attack, PlayedAttack played) {
    TakeOutbox take = current;
    if (take == null || take.finished()) {
      return null;
    }
    long seq = take.add(attack);
    if (lengthsTaken && attack.lengthMillis() == null) {
      held.put(played, new Held(take, seq));
      held.keySet().removeIf(oldest -> held.size() > MOST_HELD);
    }
    return new Attacks(take.takeId(), take.epoch(), seq, List.of(attack));
  }

  /** An attack of a take was released; null where none such is known or lengths are not taken. */
  @Nullable Lengths released(PlayedAttack played, double lengthMillis) {
    Held was = held.remove(played);
    return was == null || was.take().finished()
        ? null
        : was.take().lengths().add(was.seq(), lengthMillis);
  }

  /** Takes up what an earlier run of the program left. */
  void restore(List<ClientMessage> left) {
    Map<String, Long> lastHeld = new HashMap<>();
    for (ClientMessage one : left) {
      if (one instanceof Attacks attacks) {
        TakeOutbox take =
            takes.computeIfAbsent(
                attacks.takeId(),
                id -> new TakeOutbox(id, attacks.epoch(), attacks.firstSeq() - 1));
        attacks.attacks().forEach(take::add);
      } else if (one instanceof Lengths lengths) {
        lengths.items().forEach(item -> lastHeld.merge(lengths.takeId(), item.seq(), Math::max));
      }
    }
    for (ClientMessage one : left) {
      if (one instanceof Lengths lengths) {
        // A length without its attack: that was stored before, and so were all before it.
        long through = Objects.requireNonNull(lastHeld.get(lengths.takeId()));
        TakeOutbox take =
            takes.computeIfAbsent(
                lengths.takeId(), id -> new TakeOutbox(id, lengths.epoch(), through));
        lengths.items().forEach(item -> take.lengths().restore(item));
      }
    }
  }

  void stored(String takeId, long throughSeq) {
    TakeOutbox take = takes.get(takeId);
    if (take != null) {
      take.stored(throughSeq);
    }
  }

  void lengthsStored(String takeId, List<Long> seqs) {
    TakeOutbox take = takes.get(takeId);
    if (take != null) {
      take.lengths().stored(seqs);
    }
  }

  /** The server is older than the word for them: it keeps no lengths. */
  void lengthsNotTaken() {
    lengthsTaken = false;
    held.clear();
    takes.values().forEach(take -> take.lengths().giveUp());
  }

  void finish(String takeId) {
    TakeOutbox take = takes.get(takeId);
    if (take != null) {
      take.finish();
    }
  }

  /**
   * The server takes nothing of this take: what is kept of it has nowhere to go.
   *
   * @return how many attacks it did not store
   */
  int giveUp(String takeId) {
    TakeOutbox refused = takes.remove(takeId);
    if (refused == null) {
      return 0;
    }
    if (refused == current) {
      current = null;
    }
    held.values().removeIf(one -> one.take() == refused);
    return refused.unstored();
  }

  void rewind() {
    takes.values().forEach(TakeOutbox::rewind);
  }

  /** Sends what may be sent now; lengths of the running take wait for {@link #pumpLengths}. */
  void pump(Consumer<ClientMessage> out) {
    for (TakeOutbox take : takes.values()) {
      for (Attacks batch = take.nextBatch(); batch != null; batch = take.nextBatch()) {
        out.accept(batch);
      }
      if (take.finished() || take != current) {
        pumpLengths(take, out);
      }
      PlayedThrough finish = take.nextFinish();
      if (finish != null) {
        out.accept(finish);
      }
    }
  }

  /** Sends the lengths that may be sent now. */
  void pumpLengths(Consumer<ClientMessage> out) {
    takes.values().forEach(take -> pumpLengths(take, out));
  }

  private static void pumpLengths(TakeOutbox take, Consumer<ClientMessage> out) {
    for (Lengths batch = take.nextLengths(); batch != null; batch = take.nextLengths()) {
      out.accept(batch);
    }
  }

  boolean inFlight() {
    return takes.values().stream().anyMatch(TakeOutbox::inFlight);
  }

  /** Attacks not stored yet, over all takes. */
  int waiting() {
    return takes.values().stream().mapToInt(TakeOutbox::waiting).sum();
  }
}

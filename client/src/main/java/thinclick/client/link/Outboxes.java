package thinclick.client.link;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Attacks;
import thinclick.protocol.message.ClientMessage.PlayedThrough;
import thinclick.protocol.message.ClientMessage.WireAttack;

/** The takes whose attacks are not all stored, the running one last. Lives on the link's thread. */
final class Outboxes {
  private final Map<String, TakeOutbox> takes = new LinkedHashMap<>();
  private @Nullable TakeOutbox current;

  /** A take was announced: from now on attacks belong to it. */
  void begin(String takeId, long epoch, long storedThrough) {
    takes.values().removeIf(TakeOutbox::settled);
    current = takes.computeIfAbsent(takeId, id -> new TakeOutbox(id, epoch, storedThrough));
    current.stored(storedThrough);
  }

  /** Takes an attack into the running take; null where none runs or it is finished. */
  @Nullable Attacks add(WireAttack attack) {
    TakeOutbox take = current;
    if (take == null || take.finished()) {
      return null;
    }
    return new Attacks(take.takeId(), take.epoch(), take.add(attack), List.of(attack));
  }

  /** Takes up what an earlier run of the program left. */
  void restore(List<Attacks> left) {
    for (Attacks one : left) {
      TakeOutbox take =
          takes.computeIfAbsent(
              one.takeId(), id -> new TakeOutbox(id, one.epoch(), one.firstSeq() - 1));
      one.attacks().forEach(take::add);
    }
  }

  void stored(String takeId, long throughSeq) {
    TakeOutbox take = takes.get(takeId);
    if (take != null) {
      take.stored(throughSeq);
    }
  }

  void finish(String takeId) {
    TakeOutbox take = takes.get(takeId);
    if (take != null) {
      take.finish();
    }
  }

  /** The server does not know an earlier take any more: what is kept of it has nowhere to go. */
  void giveUpOld() {
    takes.values().removeIf(take -> take != current);
  }

  void rewind() {
    takes.values().forEach(TakeOutbox::rewind);
  }

  /** Sends what may be sent now. */
  void pump(Consumer<ClientMessage> out) {
    for (TakeOutbox take : takes.values()) {
      for (Attacks batch = take.nextBatch(); batch != null; batch = take.nextBatch()) {
        out.accept(batch);
      }
      PlayedThrough finish = take.nextFinish();
      if (finish != null) {
        out.accept(finish);
      }
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

package thinclick.client.link;

import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.time.Timers;

/**
 * Attacks on their way to the server's disk: kept, sent, and sent again until they are stored. All
 * on the loop.
 */
final class Delivery {
  private static final long RESEND_NANOS = 5_000_000_000L;
  private static final long STORE_RETRY_NANOS = 1_000_000_000L;

  /** How long after the end of a take an attack may still be on its way from the player's hands. */
  private static final long LAST_ATTACKS_NANOS = 1_000_000_000L;

  /** Lengths go together: nobody waits for one of them while the take runs. */
  private static final long LENGTHS_NANOS = 500_000_000L;

  private final LinkLoop loop;
  private final BooleanSupplier online;
  private final Consumer<ClientMessage> send;
  private final IntConsumer waitingTold;
  private final Outboxes outboxes = new Outboxes();
  private @Nullable JournalFile journal;
  private Timers.Pending resending = () -> {};
  private boolean lengthsDue;
  private int toldWaiting;

  Delivery(
      LinkLoop loop,
      BooleanSupplier online,
      Consumer<ClientMessage> send,
      IntConsumer waitingTold) {
    this.loop = loop;
    this.online = online;
    this.send = send;
    this.waitingTold = waitingTold;
  }

  /** Takes over what an earlier run of the program left. */
  void restore(JournalFile left) {
    journal = left;
    outboxes.restore(left.found());
    toldWaiting = outboxes.waiting();
  }

  /** From now on attacks are kept in a file as well, unless they are already. */
  void keepIn(Path folder, String playerId, JournalFile.Bearer bearer) {
    if (journal == null) {
      journal = JournalFile.begin(folder, playerId, bearer);
    }
  }

  /** A take in which this player has a part; everything up to {@code throughSeq} is stored. */
  void begin(String takeId, long epoch, long throughSeq) {
    outboxes.begin(takeId, epoch, throughSeq);
  }

  void add(WireAttack attack, PlayedAttack played) {
    TakeMessage.Attacks kept = outboxes.add(attack, played);
    if (kept != null) {
      if (journal != null) {
        journal.keep(kept);
      }
      pump();
    }
  }

  /** An attack was held for so long. */
  void released(PlayedAttack played, double lengthMillis) {
    TakeMessage.Lengths kept = outboxes.released(played, lengthMillis);
    if (kept != null) {
      if (journal != null) {
        journal.keep(kept);
      }
      lengthsSoon();
    }
  }

  private void lengthsSoon() {
    if (!lengthsDue) {
      lengthsDue = true;
      loop.at(
          loop.nanos() + LENGTHS_NANOS,
          () -> {
            lengthsDue = false;
            if (online.getAsBoolean()) {
              outboxes.pumpLengths(send);
            }
            pump();
          });
    }
  }

  void lengthsStored(ServerMessage.LengthsStored stored) {
    outboxes.lengthsStored(stored.takeId(), stored.seqs());
    pump();
  }

  /** The server keeps no lengths. */
  void lengthsNotTaken() {
    outboxes.lengthsNotTaken();
    pump();
  }

  /** Nothing more will come for this take. */
  void finish(String takeId) {
    outboxes.finish(takeId);
    pump();
  }

  /** The same, once the last attacks have come from the player's hands. */
  void finishSoon(String takeId) {
    loop.at(loop.nanos() + LAST_ATTACKS_NANOS, () -> finish(takeId));
  }

  void stored(ServerMessage.Stored stored) {
    outboxes.stored(stored.takeId(), stored.throughSeq());
    pump();
  }

  /** The server cannot write now. */
  void storeUnavailable() {
    resendAt(loop.nanos() + STORE_RETRY_NANOS);
  }

  /** The server has forgotten the take. */
  void giveUpOld() {
    outboxes.giveUpOld();
  }

  /** In the room, perhaps again: what is not known to be stored goes once more. */
  void again() {
    outboxes.rewind();
    pump();
    lengthsSoon();
  }

  void pause() {
    resending.cancel();
  }

  void close() {
    resending.cancel();
    if (journal != null) {
      journal.close();
    }
  }

  void pump() {
    if (online.getAsBoolean()) {
      outboxes.pump(send);
      if (outboxes.inFlight()) {
        resendAt(loop.nanos() + RESEND_NANOS);
      } else {
        resending.cancel();
      }
    }
    int waiting = outboxes.waiting();
    if (waiting == 0 && toldWaiting > 0 && journal != null) {
      journal.allStored();
    }
    if (waiting != toldWaiting) {
      toldWaiting = waiting;
      waitingTold.accept(waiting);
    }
  }

  /** An acknowledgement that never comes must not hold an attack back for ever. */
  private void resendAt(long atNanos) {
    resending.cancel();
    resending =
        loop.at(
            atNanos,
            () -> {
              if (online.getAsBoolean()) {
                again();
              }
            });
  }
}

package thinclick.client.link;

import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.time.Timers;

/**
 * Attacks on their way to the server's disk: kept, sent, and sent again until they are stored. All
 * on the loop.
 */
final class Delivery {
  private static final Logger LOG = LoggerFactory.getLogger(Delivery.class);
  private static final long RESEND_NANOS = 5_000_000_000L;

  /** A server that cannot write is asked again soon, then less and less often. */
  private static final long STORE_RETRY_NANOS = 1_000_000_000L;

  private static final long LONGEST_STORE_RETRY_NANOS = 60_000_000_000L;

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
  private long storeRetryNanos = STORE_RETRY_NANOS;

  /** True from the server's word that it cannot write until it is asked again. */
  private boolean storeAway;

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

  void lengthsStored(TakeNews.LengthsStored stored) {
    outboxes.lengthsStored(stored.takeId(), stored.seqs());
    pump();
  }

  /** The server keeps no lengths. */
  void lengthsNotTaken() {
    outboxes.lengthsNotTaken();
    pump();
  }

  /** Nothing more will come for this take. */
  private void finish(String takeId) {
    outboxes.finish(takeId);
    pump();
  }

  /** The same, once the last attacks have come from the player's hands. */
  void finishSoon(String takeId) {
    loop.at(loop.nanos() + LAST_ATTACKS_NANOS, () -> finish(takeId));
  }

  void stored(TakeNews.Stored stored) {
    storeWrites();
    outboxes.stored(stored.takeId(), stored.throughSeq());
    pump();
  }

  /** The server cannot write, now or for good: what is not stored stays, and goes again later. */
  void storeUnavailable() {
    if (!storeAway) {
      storeAway = true;
      resendAt(loop.nanos() + storeRetryNanos);
      storeRetryNanos = Math.min(2 * storeRetryNanos, LONGEST_STORE_RETRY_NANOS);
    }
  }

  /**
   * The server takes nothing of a take and never will: it is settled, in the journal too.
   *
   * @return how many attacks are given up by that
   */
  int refusedForGood(String takeId, String says) {
    int lost = outboxes.giveUp(takeId);
    if (journal != null && outboxes.waiting() > 0) { // else it is cut back as a whole
      journal.settle(takeId, says);
    }
    LOG.info("{} attacks of take {} are given up: {}", lost, takeId, says);
    loop.run(this::pump); // after what is told of it
    return lost;
  }

  /** In the room, perhaps again: what is not known to be stored goes once more. */
  void online() {
    storeWrites();
    again();
  }

  private void storeWrites() {
    storeAway = false;
    storeRetryNanos = STORE_RETRY_NANOS;
  }

  private void again() {
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
      if (!outboxes.inFlight()) {
        resending.cancel();
        storeAway = false;
      } else if (!storeAway) { // else it is asked again at its time, whatever goes out until then
        resendAt(loop.nanos() + RESEND_NANOS);
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
              storeAway = false;
              if (online.getAsBoolean()) {
                again();
              }
            });
  }
}

package thinclick.server.room;

import java.util.List;
import java.util.Optional;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews;

/** What was played: taken down, acknowledged once it is on the disk, reviewed. */
final class Playing {
  private static final long STORED_MICROS = 20_000;

  private final Standing room;
  private final Telling telling;
  private final HeardRelay relay;

  /** When the next acknowledgement is due, or before. */
  private long tellMicros = TakeRun.NEVER;

  Playing(Standing room, Telling telling, HeardRelay relay) {
    this.room = room;
    this.telling = telling;
    this.relay = relay;
  }

  private TakeRun seatedTake(Member player, String takeId) {
    TakeRun take = room.remembered(takeId);
    if (!take.seats.containsKey(player.id)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected a player with a part in the take");
    }
    return take;
  }

  void attacks(Member player, TakeMessage.Attacks message) {
    TakeRun take = seatedTake(player, message.takeId());
    checkEpoch(take, message.epoch());
    SeqLedger ledger = take.reach(player.id).ledger;
    long last = message.firstSeq() + message.attacks().size() - 1;
    if (last > ledger.through() + TakeRun.FURTHEST_AHEAD) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          "firstSeq",
          "expected at most "
              + (ledger.through() + TakeRun.FURTHEST_AHEAD)
              + ", "
              + TakeRun.FURTHEST_AHEAD
              + " beyond what is stored, found "
              + last);
    }
    room.out.append(
        new JournalEntry.Played(take.id(), player.id, message.firstSeq(), message.attacks()));
    if (take.running()) {
      relay.pass(take, player, message, ledger);
      if (!player.clockSteady(room.epoch) && !take.id().equals(player.warnedOfClockIn)) {
        player.warnedOfClockIn = take.id();
        throw new Refusal(
            ErrorCode.UNCERTAIN_CLOCK,
            null,
            "attacks are kept, but no steady clock was reported for them");
      }
    }
  }

  private static void checkEpoch(TakeRun take, long epoch) {
    if (epoch != take.announced.epoch()) {
      throw new Refusal(
          ErrorCode.WRONG_EPOCH,
          "epoch",
          "expected the take's, " + take.announced.epoch() + ", found " + epoch);
    }
  }

  void lengths(Member player, TakeMessage.Lengths message) {
    TakeRun take = seatedTake(player, message.takeId());
    checkEpoch(take, message.epoch());
    long through = take.reach(player.id).ledger.through();
    for (TakeMessage.AttackLength item : message.items()) {
      if (item.seq() > through) {
        throw new Refusal(
            ErrorCode.BAD_FIELD,
            "items",
            "expected attacks that are stored, up to " + through + ", found " + item.seq());
      }
    }
    room.out.append(new JournalEntry.Lengths(take.id(), player.id, message.items()));
  }

  void through(Member sender, TakeMessage.PlayedThrough message) {
    TakeRun take = seatedTake(sender, message.takeId());
    if (take.running()) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "the take is still running");
    }
    room.out.append(new JournalEntry.PlayedThrough(take.id(), sender.id, message.lastSeq()));
    take.playedThrough(sender.id, message.lastSeq(), room.now);
    room.changed = true;
  }

  /** The journal has taken it. */
  void journaled(JournalEntry entry, RoomJournal.Outcome outcome) {
    if (entry instanceof JournalEntry.Played played) {
      played(played, outcome);
    } else if (entry instanceof JournalEntry.Lengths lengths) {
      held(lengths, outcome);
    }
  }

  private void held(JournalEntry.Lengths lengths, RoomJournal.Outcome outcome) {
    Member player = room.members.get(lengths.playerId());
    if (player != null) {
      List<Long> seqs = lengths.items().stream().map(TakeMessage.AttackLength::seq).toList();
      room.out.send(player, new TakeNews.LengthsStored(lengths.takeId(), seqs));
    }
    if (outcome instanceof RoomJournal.Outcome.Stored) {
      room.take(lengths.takeId()).ifPresent(take -> take.grown(room.now));
    }
  }

  private void played(JournalEntry.Played played, RoomJournal.Outcome outcome) {
    Member player = room.members.get(played.playerId());
    Optional<TakeRun> found = room.take(played.takeId());
    if (found.isEmpty()) {
      return;
    }
    TakeRun take = found.get();
    TakeRun.Reach reach = take.reach(played.playerId());
    long before = reach.ledger.through();
    reach.ledger.stored(played.firstSeq(), played.lastSeq());
    reach.toTell = true;
    tellMicros = Math.min(tellMicros, reach.toldMicros + STORED_MICROS);
    if (reach.ledger.through() != before) {
      take.grown(room.now);
    }
    if (outcome instanceof RoomJournal.Outcome.Conflict conflict && player != null) {
      room.out.send(
          player,
          new ServerMessage.Problem(
              ErrorCode.SEQ_CONFLICT,
              "stored before with other content, which stays: " + conflict.seqs(),
              "firstSeq",
              null,
              false));
    }
  }

  void reviewed(RoomEvent.Reviewed reviewed) {
    Optional<TakeRun> found = room.take(reviewed.takeId());
    if (found.isEmpty()) {
      return;
    }
    TakeRun take = found.get();
    boolean provisional = take.reviewMade(room.now);
    room.out.append(new JournalEntry.Reviewed(take.id(), provisional, reviewed.review()));
    if (take == room.lastTake()) {
      room.lastReview = reviewed.review();
      room.lastReviewProvisional = provisional;
    }
    telling.review(take, reviewed.review(), provisional);
  }

  void reviewFailed(RoomEvent.ReviewFailed failed) {
    room.take(failed.takeId()).ifPresent(take -> take.reviewMade(room.now));
  }

  /** When an acknowledgement or a review is due, or before. */
  long wakeMicros() {
    long wake = tellMicros;
    for (TakeRun take : room.takes) {
      wake = Math.min(wake, take.reviewDueMicros());
    }
    return wake;
  }

  void due() {
    if (room.now >= tellMicros) {
      tellMicros = TakeRun.NEVER;
      room.takes.forEach(this::tellStored);
    }
    for (TakeRun each : room.takes) {
      if (room.now >= each.reviewDueMicros()) {
        each.reviewAsked(room.now);
        room.out.makeReview(each.id());
      }
    }
  }

  /** Tells who is to be told now, and keeps when the next is to be. */
  private void tellStored(TakeRun take) {
    take.reaches()
        .forEach(
            (playerId, reach) -> {
              long dueMicros = reach.toldMicros + STORED_MICROS;
              if (reach.toTell && room.now < dueMicros) {
                tellMicros = Math.min(tellMicros, dueMicros);
              } else if (reach.toTell) {
                reach.toTell = false;
                reach.toldMicros = room.now;
                Member player = room.members.get(playerId);
                if (player != null) {
                  room.out.send(player, new TakeNews.Stored(take.id(), reach.ledger.through()));
                }
              }
            });
  }
}

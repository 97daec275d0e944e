package thinclick.server.room;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.HeardAttack;
import thinclick.protocol.message.TakeNews.Replanned;
import thinclick.protocol.message.TakeNews.Stopped;

/** One take of a room, from its announcement to its last review. */
final class TakeRun {
  static final long NEVER = Long.MAX_VALUE;

  /** After this the review is final, whoever is still silent. */
  static final long SEALED_AFTER_MICROS = 120_000_000;

  private static final int SLEEPS_KEPT = 64;
  private static final long FIRST_REVIEW_MICROS = 2_000_000;
  private static final long NEXT_REVIEW_MICROS = 1_000_000;

  /** How far ahead of what is stored a client may number: four times what may be in flight. */
  static final long FURTHEST_AHEAD = 1_024;

  final Announced announced;
  private Take written;
  private TakeTimes times;

  /** The name in the take by playerId. */
  Map<String, String> seats;

  private final Map<String, Reach> reaches = new LinkedHashMap<>();
  private final Map<String, Long> playedThrough = new LinkedHashMap<>();
  private final Map<String, Long> goneSince = new LinkedHashMap<>();
  private final Set<String> excused = new HashSet<>();

  /** How often each player's computer has slept, by its own account. */
  private final Map<String, Integer> sleeps = new HashMap<>();

  /** Made with the first attack and given up with the last; nothing of it is written down. */
  private @Nullable LiveJudge judge;

  @Nullable Stopped stopped;
  @Nullable Replanned replanned;
  int nextStage;

  /** True once it is on the disk and everybody was told of it. */
  boolean told;

  /** When it ended by the room's present epoch; the take's own times may be of an earlier one. */
  private long endedMicros;

  private long reviewDueMicros = NEVER;
  private boolean reviewMaking;
  private boolean reviewStale;
  private boolean askedFinal;
  private boolean finalMade;

  /** A player's stored numbers, and what the player was last told of them. */
  static final class Reach {
    final SeqLedger ledger = new SeqLedger();
    long toldThrough;
    long toldMicros = Long.MIN_VALUE / 2;
    boolean toTell;
  }

  TakeRun(Announced announced, Take written, Map<String, String> seats) {
    this.announced = announced;
    this.written = written;
    this.times = new TakeTimes(written);
    this.seats = Collections.unmodifiableMap(new LinkedHashMap<>(seats)); // keeps its order
  }

  String id() {
    return announced.takeId();
  }

  /** The take without its attacks, as it now stands. */
  Take written() {
    return written;
  }

  void rewrite(Take changed) {
    written = changed;
    times = new TakeTimes(changed);
  }

  /** When its stages begin and when it ends, as it now stands. */
  TakeTimes times() {
    return times;
  }

  /** The click changes from a bar on. */
  void replan(Take changed, Replanned how) {
    nextStage = Math.min(nextStage, changed.plan().stageAt(how.fromBar()));
    rewrite(changed);
    replanned = how;
  }

  /** What a fresh attack was, so far as can be told, and which earlier ones are now otherwise. */
  List<HeardAttack> judge(String playerId, long seq, WireAttack attack) {
    LiveJudge judging = judge == null ? new LiveJudge(written) : judge;
    judge = judging;
    return judging.judge(playerId, Objects.requireNonNull(seats.get(playerId)), seq, attack);
  }

  /** A player's name was put right; what is stored is put right by others. */
  void renamed(String from, String to) {
    Map<String, String> others = new LinkedHashMap<>(seats);
    others.replaceAll((playerId, name) -> name.equals(from) ? to : name);
    seats = Collections.unmodifiableMap(others);
    written = written.renamed(name -> name.equals(from) ? to : name);
  }

  boolean running() {
    return stopped == null;
  }

  Reach reach(String playerId) {
    return reaches.computeIfAbsent(playerId, id -> new Reach());
  }

  Map<String, Reach> reaches() {
    return reaches;
  }

  // ------------------------------------------------------------------ who is there

  void gone(String playerId, long nowMicros) {
    if (seats.containsKey(playerId)) {
      goneSince.putIfAbsent(playerId, nowMicros);
    }
  }

  /** Since when the player had not been there; null where the player had. */
  @Nullable Long back(String playerId) {
    return goneSince.remove(playerId);
  }

  Map<String, Long> goneSince() {
    return goneSince;
  }

  /** One more sleep of a player's computer; false where there were too many to be kept. */
  boolean sleeps(String playerId) {
    return sleeps.merge(playerId, 1, Integer::sum) <= SLEEPS_KEPT;
  }

  // ------------------------------------------------------------------ the end and its review

  void stop(Stopped how, long nowMicros) {
    stopped = how;
    judge = null;
    endedMicros = nowMicros;
    reviewStale = true;
    reviewDueMicros = nowMicros + FIRST_REVIEW_MICROS;
  }

  /** Nobody waits any longer for what this player may still send. */
  void excuse(String playerId, long nowMicros) {
    excused.add(playerId);
    completed(nowMicros);
  }

  void playedThrough(String playerId, long lastSeq, long nowMicros) {
    playedThrough.put(playerId, lastSeq);
    completed(nowMicros);
  }

  /** More of what was played is on the disk. */
  void grown(long nowMicros) {
    if (stopped == null) {
      return;
    }
    reviewStale = true;
    reviewDueMicros = Math.min(reviewDueMicros, nowMicros + NEXT_REVIEW_MICROS);
    completed(nowMicros);
  }

  private void completed(long nowMicros) {
    if (stopped != null && allThrough() && !(finalMade && !reviewStale)) {
      reviewStale = true;
      reviewDueMicros = nowMicros;
    }
  }

  private boolean allThrough() {
    for (String playerId : seats.keySet()) {
      Long last = playedThrough.get(playerId);
      if (!excused.contains(playerId)
          && (last == null || reach(playerId).ledger.through() < last)) {
        return false;
      }
    }
    return true;
  }

  /** When a review is to be asked for; {@link #NEVER} where none is. */
  long reviewDueMicros() {
    if (stopped == null || reviewMaking) {
      return NEVER;
    }
    return finalMade
        ? reviewDueMicros
        : Math.min(reviewDueMicros, endedMicros + SEALED_AFTER_MICROS);
  }

  void reviewAsked(long nowMicros) {
    reviewMaking = true;
    reviewStale = false;
    reviewDueMicros = NEVER;
    askedFinal = allThrough() || nowMicros - endedMicros >= SEALED_AFTER_MICROS;
  }

  /** The review that was asked for is there; true where attacks may still come. */
  boolean reviewMade(long nowMicros) {
    reviewMaking = false;
    finalMade = askedFinal;
    if (reviewStale) {
      reviewDueMicros = Math.min(reviewDueMicros, nowMicros + NEXT_REVIEW_MICROS);
    }
    return !askedFinal;
  }

  // ------------------------------------------------------------------ to and from paper

  RoomState.TakeState state() {
    return new RoomState.TakeState(
        announced, written, seats, replanned, stopped, new LinkedHashMap<>(playedThrough));
  }

  static TakeRun of(RoomState.TakeState state, RoomJournal.@Nullable StoredTake stored) {
    TakeRun take = new TakeRun(state.announced(), state.written(), state.seats());
    take.told = true;
    take.stopped = state.stopped();
    take.replanned = state.replanned();
    take.finalMade = take.stopped != null;
    take.playedThrough.putAll(state.playedThrough());
    if (stored != null) {
      stored
          .seqs()
          .forEach(
              (playerId, seqs) -> {
                SeqLedger ledger = take.reach(playerId).ledger;
                seqs.forEach(seq -> ledger.stored(seq, seq));
              });
    }
    return take;
  }
}

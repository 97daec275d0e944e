package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.HeardAttack;

/**
 * What the others hear of an attack: at once in a small room, in batches in a larger one. The
 * leader hears each attack's judgement too, and the others where the leader shares it.
 */
final class HeardRelay {
  private static final int SMALL_ROOM = 8;
  private static final int MOST_ITEMS = 256;
  private static final long BATCH_MICROS = 50_000;

  private final Standing room;
  private final List<Waiting> waiting = new ArrayList<>();
  private long dueMicros = TakeRun.NEVER;

  private record Waiting(Member player, HeardAttack attack) {}

  HeardRelay(Standing room) {
    this.room = room;
  }

  /** Never scored from, so what is passed on may be lost. */
  void pass(TakeRun take, Member player, TakeMessage.Attacks message, SeqLedger ledger) {
    List<HeardAttack> judged = new ArrayList<>();
    for (int i = 0; i < message.attacks().size(); i++) {
      long seq = message.firstSeq() + i;
      if (ledger.arrived(seq)) {
        judged.addAll(take.judge(player.id, seq, message.attacks().get(i)));
      }
    }
    if (judged.isEmpty()) {
      return;
    }
    if (room.members.here() <= SMALL_ROOM) {
      passAtOnce(take, player, judged);
      return;
    }
    judged.forEach(attack -> waiting.add(new Waiting(player, attack)));
    dueMicros = Math.min(dueMicros, room.now + BATCH_MICROS);
  }

  private void passAtOnce(TakeRun take, Member player, List<HeardAttack> judged) {
    Predicate<Member> others = member -> member != player;
    Predicate<Member> told = member -> hearsJudgements(take, member);
    room.out.send(
        room.members.connections(others.and(told)), new TakeNews.Heard(take.id(), judged));
    List<Long> untold = room.members.connections(others.and(told.negate()));
    List<HeardAttack> plain = untold.isEmpty() ? List.of() : plain(judged);
    if (!plain.isEmpty()) {
      room.out.send(untold, new TakeNews.Heard(take.id(), plain));
    }
  }

  /** A duo shares by itself; else it is for the leader to say. */
  private boolean hearsJudgements(TakeRun take, Member member) {
    return room.leads(member) || room.shares(take);
  }

  private static List<HeardAttack> plain(List<HeardAttack> judged) {
    List<HeardAttack> plain = new ArrayList<>(judged.size()); // for every attack: no stream here
    for (HeardAttack attack : judged) {
      if (!attack.again()) {
        plain.add(attack.withoutJudgement());
      }
    }
    return plain;
  }

  /** When a batch is to go. */
  long dueMicros() {
    return dueMicros;
  }

  void due() {
    if (room.now >= dueMicros) {
      dueMicros = TakeRun.NEVER;
      TakeRun take = room.lastTake();
      if (take != null) {
        room.members.all().forEach(member -> sendBatch(take, member));
      }
      waiting.clear();
    }
  }

  private void sendBatch(TakeRun take, Member member) {
    if (!member.here()) {
      return;
    }
    List<HeardAttack> judged =
        waiting.stream().filter(each -> each.player() != member).map(Waiting::attack).toList();
    List<HeardAttack> told = hearsJudgements(take, member) ? judged : plain(judged);
    if (!told.isEmpty()) {
      room.out.send(
          member,
          new TakeNews.Heard(take.id(), told.subList(0, Math.min(told.size(), MOST_ITEMS))));
    }
  }
}

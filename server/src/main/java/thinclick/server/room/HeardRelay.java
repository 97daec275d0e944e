package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.HeardAttack;

/** What the others hear of an attack: at once in a small room, in batches in a larger one. */
final class HeardRelay {
  private static final int SMALL_ROOM = 8;
  private static final long BATCH_MICROS = 50_000;

  private final Standing room;
  private final List<Waiting> waiting = new ArrayList<>();
  private long dueMicros = TakeRun.NEVER;

  private record Waiting(Member player, HeardAttack attack) {}

  HeardRelay(Standing room) {
    this.room = room;
  }

  /** Never scored from, so what is passed on may be lost. */
  void pass(TakeRun take, Member player, ClientMessage.Attacks message, SeqLedger ledger) {
    List<HeardAttack> fresh = new ArrayList<>();
    for (int i = 0; i < message.attacks().size(); i++) {
      long seq = message.firstSeq() + i;
      if (ledger.arrived(seq)) {
        fresh.add(new HeardAttack(player.id, seq, message.attacks().get(i).micros(), null, null));
      }
    }
    if (fresh.isEmpty()) {
      return;
    }
    if (room.members.here() <= SMALL_ROOM) {
      room.out.send(room.members.connectionsBut(player), new ServerMessage.Heard(take.id(), fresh));
      return;
    }
    fresh.forEach(attack -> waiting.add(new Waiting(player, attack)));
    dueMicros = Math.min(dueMicros, room.now + BATCH_MICROS);
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
    List<HeardAttack> items =
        waiting.stream()
            .filter(each -> each.player() != member)
            .map(Waiting::attack)
            .limit(256)
            .toList();
    if (member.here() && !items.isEmpty()) {
      room.out.send(member, new ServerMessage.Heard(take.id(), items));
    }
  }
}

package thinclick.server.room;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews.HeardAttack;
import thinclick.server.scoring.LiveScorer;
import thinclick.server.scoring.LiveScorer.Judgement;
import thinclick.server.scoring.LiveScorer.Kind;

/**
 * What the attacks of a running take were, so far as can be told while it runs, by their numbers.
 * Made by the room's one writer; an attack costs the same however long the take has been running.
 */
final class LiveJudge {
  /** More of a player's last attacks than the scorer ever judges again. */
  private static final int REMEMBERED = 16;

  private final LiveScorer scorer;
  private final Map<String, Deque<Numbered>> last = new HashMap<>();

  private record Numbered(long seq, long micros) {}

  /**
   * @param written the take without attacks
   */
  LiveJudge(Take written) {
    scorer = new LiveScorer(written);
  }

  /**
   * Judges one attack.
   *
   * @param name the player's in the take
   * @return the attack with its judgement, then earlier ones that are judged otherwise now
   */
  List<HeardAttack> judge(String playerId, String name, long seq, WireAttack attack) {
    Deque<Numbered> known = last.computeIfAbsent(playerId, id -> new ArrayDeque<>());
    List<HeardAttack> told = new ArrayList<>();
    for (Judgement judged : scorer.judge(name, attack.micros(), attack.pitch())) {
      if (told.isEmpty()) {
        told.add(heard(playerId, seq, judged, false));
      } else {
        known.stream()
            .filter(one -> one.micros() == judged.micros())
            .forEach(one -> told.add(heard(playerId, one.seq(), judged, true)));
      }
    }
    known.addLast(new Numbered(seq, attack.micros()));
    if (known.size() > REMEMBERED) {
      known.removeFirst();
    }
    return told;
  }

  private static HeardAttack heard(String playerId, long seq, Judgement judged, boolean again) {
    return new HeardAttack(
        playerId, seq, judged.micros(), judged.asynchronyMillis(), word(judged.kind()), again);
  }

  private static String word(Kind kind) {
    return switch (kind) {
      case TOGETHER -> "together";
      case EARLY -> "early";
      case LATE -> "late";
      case DISPLACED -> "displaced";
      case ADDED -> "added";
      case SET_ASIDE -> HeardAttack.SET_ASIDE;
      case FREE -> "free";
    };
  }
}

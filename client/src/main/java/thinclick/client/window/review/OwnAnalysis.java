package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.session.OwnTake;
import thinclick.client.window.session.RoomState;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.TakeNews.Stopped;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;

/**
 * The take as this window knows it: its own attacks, and those it heard of the others. The figures
 * of the review are the host's; from here come the places of the own attacks.
 */
final class OwnAnalysis {
  private static final Logger LOG = LoggerFactory.getLogger(OwnAnalysis.class);

  private OwnAnalysis() {}

  /**
   * The take with all that was heard; null where there was no own part in it.
   *
   * @param uncertaintyMillis of the own chair, as the host judged it
   */
  static @Nullable Take take(RoomState room, OwnTake played, double uncertaintyMillis) {
    Take written = room.take();
    Part own = room.ownPart();
    if (written == null || own == null) {
      return null;
    }
    List<Attack> attacks = new ArrayList<>(played.ownAttacks(own.player()));
    for (String id : played.heardIds()) {
      String name = room.nameOf(id);
      if (written.parts().stream().anyMatch(part -> part.player().equals(name))) {
        played.of(id).forEach(micros -> attacks.add(Attack.tap(name, micros)));
      }
    }
    attacks.sort(Comparator.comparingLong(Attack::micros));
    Stopped stopped = room.stopped();
    List<Part> parts =
        written.parts().stream()
            .map(
                part ->
                    part.player().equals(own.player())
                        ? part.edited().uncertaintyMillis(uncertaintyMillis).part()
                        : part)
            .toList();
    Take whole = written.withParts(parts).withAttacks(attacks);
    return stopped == null ? whole : ended(whole, stopped.atMicros());
  }

  private static Take ended(Take take, long atMicros) {
    long end = take.startMicros() + Math.round(take.plan().bars() * barMicros(take));
    return atMicros >= end
        ? take
        : take.edited().endMicros(Math.max(take.startMicros(), atMicros)).take();
  }

  private static double barMicros(Take take) {
    return take.grid().beatMicros() * take.meter().beatsPerBar();
  }

  /** What was decided about each attack; null where it cannot be said. */
  static @Nullable Analysis of(Take take) {
    try {
      return Scorer.analyse(take);
    } catch (BadInput unfit) {
      LOG.warn("the own take cannot be judged here: {}", unfit.getMessage());
      return null;
    }
  }
}

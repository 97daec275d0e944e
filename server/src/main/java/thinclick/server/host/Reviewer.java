package thinclick.server.host;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.history.Entry;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Outcome;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;

/**
 * Reviews the rooms' takes, and remembers how those before came out: the click gets thinner after
 * two that were held by the same players at the same drill, tempo and plan.
 */
final class Reviewer {
  private static final int MOST_BANDS = 200;
  private static final int MOST_TAKES = 4;

  private final Speaker speaker;

  /** By band and drill, by when the take began; the newest last. */
  private final Map<Same, Map<Long, Outcome>> before = new LinkedHashMap<>();

  private record Same(Entry.Key key, Set<String> players) {}

  Reviewer(Speaker speaker) {
    this.speaker = speaker;
  }

  /** The review with its words; a take that is reviewed again takes its own place. */
  synchronized JsonNode review(Take take) {
    Analysis analysis = Scorer.analyse(take);
    Set<String> players = new TreeSet<>();
    take.parts().stream().map(Part::player).forEach(players::add);
    Same same = new Same(Entry.Key.of(take), players);
    Map<Long, Outcome> takes = before.remove(same);
    takes = takes == null ? new LinkedHashMap<>() : takes;
    takes.remove(take.startMicros());
    List<Outcome> earlier = new ArrayList<>(takes.values());
    takes.put(take.startMicros(), Outcome.of(analysis.review()));
    if (takes.size() > MOST_TAKES) {
      takes.remove(takes.keySet().iterator().next());
    }
    before.put(same, takes);
    if (before.size() > MOST_BANDS) {
      before.remove(before.keySet().iterator().next());
    }
    return Spoken.of(analysis, earlier, speaker).toJson();
  }
}

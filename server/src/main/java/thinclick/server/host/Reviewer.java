package thinclick.server.host;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.history.Entry;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Outcome;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;

/**
 * Reviews the rooms' takes, and remembers how those before came out: the click gets thinner after
 * two that were held by the same band at the same drill, tempo and plan, be it on two evenings.
 */
final class Reviewer {
  private static final int MOST_DRILLS = 200;
  private static final int MOST_TAKES = 16;

  private final Speaker speaker;
  private final Function<Entry.Key, List<Entry>> kept;

  /** By drill, by when the take began; the newest last, those of earlier runs below 0. */
  private final Map<Entry.Key, Map<Long, Before>> before = new LinkedHashMap<>();

  private record Before(Band band, Outcome outcome) {}

  /**
   * @param kept the takes of earlier runs of the host with such a key, the oldest first; asked once
   *     for each key
   */
  Reviewer(Speaker speaker, Function<Entry.Key, List<Entry>> kept) {
    this.speaker = speaker;
    this.kept = kept;
  }

  /** The review with its words; a take that is reviewed again takes its own place. */
  synchronized JsonNode review(Take take) {
    Analysis analysis = Scorer.analyse(take);
    Band band = new Band(take.parts().stream().map(Part::player).collect(Collectors.toSet()));
    Entry.Key key = Entry.Key.of(take);
    Map<Long, Before> takes = before.remove(key);
    takes = takes == null ? ofEarlierRuns(key) : takes;
    takes.remove(take.startMicros());
    List<Outcome> earlier =
        takes.values().stream()
            .filter(one -> one.band().sameAs(band))
            .map(Before::outcome)
            .toList();
    if (!abandoned(take)) {
      takes.put(take.startMicros(), new Before(band, Outcome.of(analysis.review())));
    }
    if (takes.size() > MOST_TAKES) {
      takes.remove(takes.keySet().iterator().next());
    }
    before.put(key, takes);
    if (before.size() > MOST_DRILLS) {
      before.remove(before.keySet().iterator().next());
    }
    return Spoken.of(analysis, earlier, speaker).toJson();
  }

  /** Stopped before its half: it says nothing of how the band holds the whole. */
  static boolean abandoned(Take take) {
    Long end = take.endMicros();
    long halfSteps = (long) take.plan().bars() * take.grid().stepsPerBar() / 2;
    return end != null && end < take.grid().instantOf(halfSteps);
  }

  private Map<Long, Before> ofEarlierRuns(Entry.Key key) {
    List<Entry> entries = kept.apply(key);
    Map<Long, Before> found = new LinkedHashMap<>();
    int from = Math.max(0, entries.size() - MOST_TAKES);
    for (int i = from; i < entries.size(); i++) {
      Review review = entries.get(i).review();
      Band band =
          new Band(review.players().stream().map(PlayerReview::player).collect(Collectors.toSet()));
      found.put((long) i - entries.size(), new Before(band, Outcome.of(review)));
    }
    return found;
  }
}

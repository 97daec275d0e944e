package thinclick.server.host;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Take;
import thinclick.server.history.Entry;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.Scorer;
import thinclick.server.store.Store;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** The takes that a host has kept, with their reviews. */
public final class KeptHistory {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private KeptHistory() {}

  /**
   * All takes that have ended, the oldest first. Waits for the store; a take whose review was never
   * made, or is of an older kind, is reviewed now and its review kept.
   *
   * @param speaker says what such a review says
   */
  public static List<Entry> entries(Store store, Speaker speaker) {
    List<Entry> entries = new ArrayList<>();
    for (Store.KeptTake kept : store.history().join()) {
      entries.add(entry(store, kept, speaker));
    }
    return entries;
  }

  /**
   * Those with this key that began before an instant and were reviewed, the oldest first; the
   * reviews of others are not even read.
   */
  static List<Entry> entries(Store store, Entry.Key key, Instant before, Speaker speaker) {
    List<Entry> entries = new ArrayList<>();
    for (Store.KeptTake kept : store.history().join()) {
      boolean earlier = kept.review() != null && kept.begunAt().isBefore(before);
      if (earlier && Entry.Key.of(kept.take()).equals(key)) {
        entries.add(entry(store, kept, speaker));
      }
    }
    return entries;
  }

  /** One of them, reviewed now where need be. */
  static Entry entry(Store store, Store.KeptTake kept, Speaker speaker) {
    return new Entry(
        kept.id(), kept.begunAt(), Entry.Key.of(kept.take()), review(store, kept, speaker));
  }

  private static Review review(Store store, Store.KeptTake kept, Speaker speaker) {
    String json = kept.review();
    if (json != null) {
      try {
        return JSON.readValue(json, Review.class);
      } catch (JacksonException | IllegalArgumentException ofAnotherKind) {
        return reviewed(store, kept, speaker);
      }
    }
    return reviewed(store, kept, speaker);
  }

  private static Review reviewed(Store store, Store.KeptTake kept, Speaker speaker) {
    Take take = store.take(kept.id()).join().orElseThrow();
    Spoken spoken = Spoken.of(Scorer.analyse(take), speaker);
    store.keepReview(kept.id(), JSON.writeValueAsString(spoken.toJson())).join();
    return spoken.review();
  }
}

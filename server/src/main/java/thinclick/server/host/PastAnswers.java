package thinclick.server.host;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.server.history.Course;
import thinclick.server.history.CourseLine;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.Entry;
import thinclick.server.history.FewestClicks;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.LastLike;
import thinclick.server.room.PastQuestion;
import thinclick.server.scoring.Review;
import thinclick.server.season.NameKey;
import thinclick.server.store.Store;
import thinclick.server.store.Store.PastTake;
import thinclick.server.words.TakeFigures;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What a room may be told of takes before. It knows its own takes and those of the class it is held
 * for; without a class, those of no class in which the same band played, as the {@link Reviewer}
 * remembers them. A player is told of nobody else; known in the own room by the playerId that the
 * token brings back, elsewhere by the nickname. Waits for the store.
 */
final class PastAnswers {
  /** The most takes of a course, the newest. */
  static final int MOST_TAKES = 24;

  private static final int MOST_LOOKED_AT = 200;
  private static final Logger LOG = LoggerFactory.getLogger(PastAnswers.class);
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Store store;

  PastAnswers(Store store) {
    this.store = store;
  }

  /** The answer; empty where the take that is asked about is not kept with a review. */
  Optional<ServerMessage> answer(String roomId, PastQuestion wanted) {
    if (wanted instanceof PastQuestion.CourseOf course) {
      return course(roomId, course);
    }
    return Optional.of(fewest(roomId, (PastQuestion.FewestAt) wanted));
  }

  // ---------------------------------------------------------------- the course up to a take

  private Optional<ServerMessage> course(String roomId, PastQuestion.CourseOf wanted) {
    List<PastTake> all =
        new ArrayList<>(store.knownIn(roomId, wanted.title(), MOST_LOOKED_AT).join());
    Collections.reverse(all); // the oldest first
    PastTake now =
        all.stream().filter(one -> one.id().equals(wanted.takeId())).findFirst().orElse(null);
    if (now == null) {
      return Optional.empty();
    }
    Entry.Key key = Entry.Key.of(now.take());
    List<PastTake> like =
        all.subList(0, all.indexOf(now) + 1).stream()
            .filter(one -> Entry.Key.of(one.take()).equals(key))
            .filter(one -> one.equals(now) || !Reviewer.abandoned(one.take()))
            .toList();
    JsonNode band = null;
    JsonNode last = null;
    if (wanted.band()) {
      List<Entry> entries =
          newest(like.stream().filter(one -> band(one).sameAs(band(now))).toList(), this::entry);
      if (!entries.isEmpty()) {
        band = HistoryJson.of(List.of(CourseSheet.of(new Course(key, entries), null)), null);
      }
      last = last(entries, now);
    }
    JsonNode own = wanted.playerId() == null ? null : own(like, now, wanted.playerId());
    return Optional.of(new AnswerMessage.CourseSoFar(now.id(), band, own, last));
  }

  private static @Nullable JsonNode last(List<Entry> entries, PastTake now) {
    for (int i = entries.size() - 1; i >= 0; i--) {
      Entry entry = entries.get(i);
      if (!entry.id().equals(now.id())) {
        TakeFigures figures =
            TakeFigures.of(entry.review()).only(new HashSet<>(now.players().values()));
        return new LastLike(entry.id(), entry.begunAt(), figures).toJson();
      }
    }
    return null;
  }

  private @Nullable JsonNode own(List<PastTake> like, PastTake now, String playerId) {
    String name = now.players().get(playerId);
    Part part = name == null ? null : part(now, name);
    if (name == null || part == null || part.standIn()) {
      return null;
    }
    boolean alone = now.players().size() == 1;
    List<CourseLine> lines =
        newest(
            like,
            take -> {
              String then = nameIn(take, now, playerId, name);
              Part played = then == null ? null : part(take, then);
              if (played == null
                  || played.standIn()
                  || played.figure() != part.figure()
                  || (take.players().size() == 1) != alone) {
                return null;
              }
              Entry entry = entry(take);
              return entry == null || entry.review().player(played.player()) == null
                  ? null
                  : CourseLine.of(entry, played.player());
            });
    return lines.isEmpty()
        ? null
        : HistoryJson.of(
            List.of(new CourseSheet(Entry.Key.of(now.take()), name, lines, null, null)), name);
  }

  /** What somebody was called in a take; null where it is not known to be theirs. */
  private static @Nullable String nameIn(
      PastTake take, PastTake now, String playerId, String name) {
    if (take.sameRoom()) {
      return take.players().get(playerId);
    }
    if (!take.inClass() && !band(take).sameAs(band(now))) {
      return null;
    }
    String key = NameKey.of(name);
    return take.players().values().stream()
        .filter(one -> NameKey.of(one).equals(key))
        .findFirst()
        .orElse(null);
  }

  private static @Nullable Part part(PastTake take, String name) {
    return take.take().parts().stream()
        .filter(part -> part.player().equals(name))
        .findFirst()
        .orElse(null);
  }

  // ---------------------------------------------------------------- the fewest clicks

  private ServerMessage fewest(String roomId, PastQuestion.FewestAt wanted) {
    Band here = new Band(wanted.players());
    List<PastTake> known =
        store.knownIn(roomId, wanted.title(), MOST_LOOKED_AT).join().stream()
            .filter(take -> take.take().tempo() == wanted.tempo())
            .filter(take -> !Reviewer.abandoned(take.take()))
            .filter(take -> mayCount(take, here))
            .toList();
    List<Entry> entries = known.stream().map(this::entry).filter(Objects::nonNull).toList();
    return new AnswerMessage.Fewest(
        wanted.title(),
        wanted.tempo(),
        FewestClicks.of(entries, wanted.title(), wanted.tempo())
            .map(FewestClicks::told)
            .orElse(null));
  }

  /** Before anybody has come in, the room's own takes and its class's are all there is. */
  private static boolean mayCount(PastTake take, Band here) {
    return here.players().isEmpty() ? take.sameRoom() || take.inClass() : band(take).sameAs(here);
  }

  // ---------------------------------------------------------------- reading

  private static Band band(PastTake take) {
    return new Band(take.players().values().stream().collect(Collectors.toSet()));
  }

  /** The newest, the oldest of them first; reads no more reviews than that. */
  private <T> List<T> newest(List<PastTake> takes, Function<PastTake, @Nullable T> read) {
    List<T> found = new ArrayList<>();
    for (int i = takes.size() - 1; i >= 0 && found.size() < MOST_TAKES; i--) {
      T one = read.apply(takes.get(i));
      if (one != null) {
        found.add(one);
      }
    }
    Collections.reverse(found);
    return found;
  }

  /** A take with its review; null where that is of another kind, or gone meanwhile. */
  private @Nullable Entry entry(PastTake take) {
    Optional<String> json = store.review(take.id()).join();
    if (json.isEmpty()) {
      return null;
    }
    try {
      Review review = JSON.readValue(json.get(), Review.class);
      return new Entry(take.id(), take.begunAt(), Entry.Key.of(take.take()), review);
    } catch (JacksonException | IllegalArgumentException ofAnotherKind) {
      LOG.debug("the review of {} is of another kind", take.id());
      return null;
    }
  }
}

package thinclick.server.season;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealtFigure;
import thinclick.server.history.Entry;
import thinclick.server.scoring.PlayerReview;

/**
 * Somebody in a class, and how it goes for them.
 *
 * @param name as last written
 * @param key by which the name is told apart
 * @param chair where they usually sit, from 1: as written down, else as in their newest take; null
 *     where neither is known
 * @param instrument what they usually play, or null
 * @param takes those they played in, the oldest first
 */
public record Pupil(
    String name,
    String key,
    @Nullable Integer chair,
    @Nullable String instrument,
    List<ClassTake> takes) {
  public Pupil {
    takes = List.copyOf(takes);
  }

  /** When they last played; null where they never did. */
  public @Nullable Instant lastSeen() {
    return takes.isEmpty() ? null : newest().entry().begunAt();
  }

  private ClassTake newest() {
    return takes.get(takes.size() - 1);
  }

  /** The level they stand at; empty where no take gives a verdict. */
  public Optional<Standing> standing() {
    return Standing.of(takes, key);
  }

  /** The thinnest click they held. */
  public Optional<OwnRung> rung() {
    return OwnRung.of(takes, key);
  }

  /**
   * Their newest take and those like it before: the same drill, tempo and plan, the same figure for
   * them, and alone or not, since who plays alone is judged against the click.
   */
  public List<ClassTake> course() {
    if (takes.isEmpty()) {
      return List.of();
    }
    Entry.Key like = newest().entry().key();
    DealtFigure figure = figure(newest());
    boolean alone = newest().seats().size() == 1;
    return takes.stream()
        .filter(
            take ->
                take.entry().key().equals(like)
                    && figure(take) == figure
                    && (take.seats().size() == 1) == alone)
        .toList();
  }

  private @Nullable DealtFigure figure(ClassTake take) {
    return take.seat(key).map(ClassTake.Seat::figure).orElse(null);
  }

  /** Their figures in a take. */
  public @Nullable PlayerReview review(ClassTake take) {
    return take.review(key);
  }
}

package thinclick.server.history;

import java.time.Instant;
import java.util.List;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;

/**
 * One take of the past.
 *
 * @param id as it is listed
 * @param begunAt when it was played
 * @param key what it must share with others to be compared with them
 * @param review its figures
 */
public record Entry(String id, Instant begunAt, Key key, Review review) {
  /**
   * Drill, tempo and click plan: figures are compared only where all of it is the same.
   *
   * @param fitted true where somebody was dealt another figure than the drill writes, so that the
   *     band did not play the drill as it stands
   */
  public record Key(
      String title,
      Meter meter,
      int stepsPerBeat,
      Swing swing,
      double tempo,
      List<Stage> stages,
      boolean fitted) {
    public Key {
      stages = List.copyOf(stages);
    }

    /** The key of a take, with or without its attacks. */
    public static Key of(Take take) {
      return new Key(
          take.title(),
          take.meter(),
          take.stepsPerBeat(),
          take.swing(),
          take.tempo(),
          take.stages(),
          fitted(take.parts()));
    }

    /** True where a part is not what the drill writes. */
    public static boolean fitted(List<Part> parts) {
      return parts.stream().anyMatch(part -> part.figure() != null);
    }
  }

  /** True where a person of that name played; a stand-in of the same name is somebody else. */
  public boolean has(String player) {
    PlayerReview own = review.player(player);
    return own != null && !own.standIn();
  }
}

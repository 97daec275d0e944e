package thinclick.server.history;

import java.time.Instant;
import java.util.List;
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
  /** Drill, tempo and click plan: figures are compared only where all of it is the same. */
  public record Key(
      String title, Meter meter, int stepsPerBeat, Swing swing, double tempo, List<Stage> stages) {
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
          take.stages());
    }
  }

  /** True where a person of that name played; a stand-in of the same name is somebody else. */
  public boolean has(String player) {
    PlayerReview own = review.player(player);
    return own != null && !own.standIn();
  }
}

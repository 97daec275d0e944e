package thinclick.protocol.message;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Check;

/** What anybody may ask for: what there is to rehearse, a take, how it went before. */
public sealed interface QuestionMessage extends ClientMessage.Command {
  /** Asks what there is to rehearse, or for one drill whole by its title. */
  record Browse(long requestId, @Nullable String title) implements QuestionMessage {
    public Browse {
      Limits.request(requestId);
      Limits.text("title", title, 200);
    }

    @Override
    public void to(Handler handler) {
      handler.onBrowse(this);
    }
  }

  /**
   * Asks for a take as a file: whole where the leader shares it, else the own part alone.
   *
   * @param piece from 1: which piece of one that is too long for a frame; null for a client that
   *     takes it in one frame only
   */
  record KeepTake(long requestId, String takeId, @Nullable Integer piece)
      implements QuestionMessage {
    public KeepTake {
      Limits.request(requestId);
      Limits.id("takeId", takeId);
      if (piece != null) {
        Check.range("piece", piece.longValue(), 1L, 10_000);
      }
    }

    @Override
    public void to(Handler handler) {
      handler.onKeepTake(this);
    }
  }

  /**
   * Asks how it went up to a take, at its drill, tempo and click plan: the own course, and for the
   * leader the band's.
   */
  record AskCourse(long requestId, String takeId) implements QuestionMessage {
    public AskCourse {
      Limits.request(requestId);
      Limits.id("takeId", takeId);
    }

    @Override
    public void to(Handler handler) {
      handler.onAskCourse(this);
    }
  }

  /** Asks for the fewest clicks that this band has held at a drill and tempo; the leader's. */
  record AskFewest(long requestId, String title, double tempo) implements QuestionMessage {
    public AskFewest {
      Limits.request(requestId);
      Check.length("title", Check.present("title", title), 1, 200);
      Check.range("tempo", tempo, 30.0, 320.0);
    }

    @Override
    public void to(Handler handler) {
      handler.onAskFewest(this);
    }
  }
}

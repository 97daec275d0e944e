package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.JsonNode;

/** What one member asked for, to that member alone. */
public sealed interface AnswerMessage extends ServerMessage {
  /** Answers a {@code clock}: received at {@code t2Micros}, answered at {@code t3Micros}. */
  record ClockAnswer(long id, long t1Micros, long t2Micros, long t3Micros, long epoch)
      implements AnswerMessage {}

  /** Answers a {@code soundCheck}. */
  record SoundCheckNoted(double latencyMillis, double uncertaintyMillis, boolean accepted)
      implements AnswerMessage {}

  /**
   * What there is to rehearse.
   *
   * @param drills the host's own first
   * @param lessons the host's own first
   */
  record LibraryList(List<DrillLine> drills, List<Lesson> lessons) implements AnswerMessage {
    public LibraryList {
      drills = Check.list("drills", drills);
      lessons = Check.list("lessons", lessons);
    }
  }

  /**
   * A drill in a line.
   *
   * @param chairs how many rows it has
   * @param own true where it is the host's own, null for the stock
   */
  record DrillLine(
      String title,
      int level,
      Meter meter,
      int stepsPerBeat,
      int chairs,
      Drill.TempoRange tempo,
      @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Boolean own) {
    /** The line of a drill. */
    public static DrillLine of(Drill drill, boolean own) {
      return new DrillLine(
          drill.title(),
          drill.level(),
          drill.meter(),
          drill.stepsPerBeat(),
          drill.chairs().size(),
          drill.tempo(),
          own ? true : null);
    }
  }

  /** One drill whole, as it was asked for by title. */
  record WholeDrill(Drill drill) implements AnswerMessage {}

  /**
   * A take, as it was asked for.
   *
   * @param whole true where everybody's part is in it, false where it holds the receiver's alone
   * @param take as its file
   */
  record KeptTake(String takeId, boolean whole, Take take) implements AnswerMessage {}

  /**
   * A piece of a take that is too long for one frame.
   *
   * @param whole true where everybody's part is in it, false where it holds the receiver's alone
   * @param piece from 1
   * @param of how many there are
   * @param bytes of the whole file
   * @param sha256 of the whole file: base64url without padding
   * @param lines of base64, which decode one by one, at most 3,072 bytes each
   */
  record TakePiece(
      String takeId, boolean whole, int piece, int of, int bytes, String sha256, List<String> lines)
      implements AnswerMessage {
    public TakePiece {
      lines = Check.list("lines", lines);
    }
  }

  /**
   * How it went up to a take, at its drill, tempo and click plan.
   *
   * @param band the band's course, as {@code history --json} prints it; null for one who does not
   *     lead
   * @param own the receiver's own, as {@code history --player NAME --json} prints it; null for one
   *     without a part in the take
   * @param last figures of the newest take before it, to be compared; null where there is none, and
   *     for one who does not lead
   */
  record CourseSoFar(
      String takeId, @Nullable JsonNode band, @Nullable JsonNode own, @Nullable JsonNode last)
      implements AnswerMessage {}

  /**
   * The fewest clicks that this band has held at a drill and tempo.
   *
   * @param tempo beats a minute
   * @param held null where nothing was held yet
   */
  record Fewest(String title, double tempo, @Nullable HeldClick held) implements AnswerMessage {}

  /**
   * A click that was held.
   *
   * @param stage what clicked
   * @param clicksPerBar how many of them a bar, on the average
   * @param holdPercent what was placed under it, of what is written
   * @param begunAt when the take began: ISO 8601, UTC
   */
  record HeldClick(
      Stage stage,
      Meter meter,
      int stepsPerBeat,
      double clicksPerBar,
      double holdPercent,
      String begunAt) {}
}

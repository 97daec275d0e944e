package thinclick.client.window.review;

import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.server.engraving.Paper;
import thinclick.server.export.DrawingPdf;
import thinclick.server.history.Entry;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.LastLike;
import thinclick.server.picture.ComparePicture;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.scoring.Review;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Comparison;
import thinclick.server.words.Speaker;
import thinclick.server.words.TakeFigures;
import tools.jackson.databind.JsonNode;

/** The take that was reviewed, and the last one like it. */
final class LikeTakes {
  private static final Logger LOG = LoggerFactory.getLogger(LikeTakes.class);

  private final Words words;
  private final Speaker speaker;

  LikeTakes(Words words) {
    this.words = words;
    this.speaker = Speaker.of(words.locale());
  }

  /**
   * The take that was reviewed beside the newest like one before it; null where the host tells of
   * none.
   */
  static @Nullable Comparison withLast(CourseSoFar course, Review now) {
    JsonNode last = course.last();
    JsonNode band = course.band();
    if (last == null || band == null) {
      return null;
    }
    try {
      Entry.Key key = HistoryJson.read(band).get(0).key();
      return Comparison.of(
          key.title(),
          key.tempo(),
          key.stages().stream()
              .map(stage -> ClickWords.of(stage, key.meter(), key.stepsPerBeat()))
              .toList(),
          LastLike.read(last).figures(),
          TakeFigures.of(now));
    } catch (BadInput unreadable) {
      LOG.warn("takes before that cannot be read: {}", unreadable.getMessage());
      return null;
    }
  }

  /** What the two come to: a sentence, the columns of both, the table. */
  PlayerSheet.Content sheet(Comparison comparison) {
    return ComparePicture.sheet(comparison, speaker);
  }

  /** The same on paper. */
  byte[] pdf(Comparison comparison) {
    Paper paper = Paper.usualIn(words.locale());
    return DrawingPdf.pdf(PlayerSheet.pages(sheet(comparison), paper), paper, words.language());
  }
}

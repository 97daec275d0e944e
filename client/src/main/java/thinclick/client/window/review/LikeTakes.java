package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.server.history.Entry;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.LastLike;
import thinclick.server.scoring.Figure;
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
  private final FigureCells cells;

  LikeTakes(Words words) {
    this.words = words;
    this.speaker = Speaker.of(words.locale());
    this.cells = new FigureCells(words);
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

  /** Two like takes, figure beside figure. */
  Lines compared(Comparison comparison) {
    List<List<String>> lines = new ArrayList<>();
    for (Comparison.Row row : comparison.rows()) {
      lines.add(
          List.of(
              speaker.say(row.name()),
              figure(row.kind(), row.first()),
              figure(row.kind(), row.second()),
              words.say(
                  switch (row.verdict()) {
                    case BETTER -> "leader.better";
                    case WORSE -> "leader.worse";
                    case OPEN -> "leader.open";
                  })));
    }
    return new Lines(
        List.of(
            words.say("leader.figure"),
            words.say("leader.before"),
            words.say("leader.now"),
            words.say("leader.verdict")),
        lines);
  }

  private String figure(Comparison.Kind kind, Figure figure) {
    return figure.known() ? cells.ranged(kind.shown(figure), figure.interval()) : cells.unknown();
  }
}

package thinclick.client.window.review;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.server.engraving.Paper;
import thinclick.server.export.PdfFiles;
import thinclick.server.history.Entry;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.LastLike;
import thinclick.server.picture.SlipPages;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PairReview;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.PositionReview;
import thinclick.server.scoring.Reason;
import thinclick.server.scoring.Review;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Comparison;
import thinclick.server.words.FigureTable;
import thinclick.server.words.ForecastWords;
import thinclick.server.words.Said;
import thinclick.server.words.ShiftWords;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import thinclick.server.words.TakeFigures;
import tools.jackson.databind.JsonNode;

/** What the leader reads beyond the page that all read: role by role, on and off, who follows. */
public final class LeaderModel {
  private static final Logger LOG = LoggerFactory.getLogger(LeaderModel.class);

  private final Words words;
  private final Speaker speaker;

  /**
   * A table as it is read.
   *
   * @param heads of its columns
   * @param lines as many cells each
   */
  public record Lines(List<String> heads, List<List<String>> lines) {}

  /**
   * A stretch on the time line.
   *
   * @param player whose it is
   * @param fromBar the first bar, from 0
   * @param toBar the first bar after it
   * @param steps by how many steps, positive late
   * @param says what it is called
   */
  public record Episode(String player, int fromBar, int toBar, int steps, String says) {}

  public LeaderModel(Words words) {
    this.words = words;
    this.speaker = Speaker.of(words.locale());
  }

  // ---------------------------------------------------------------- tables

  /** Role by role; empty where no roles were dealt. */
  public Lines roles(Review review) {
    Map<String, List<PlayerReview>> byRole = new LinkedHashMap<>();
    for (PlayerReview player : review.players()) {
      if (player.role() != null) {
        byRole.computeIfAbsent(player.role(), role -> new ArrayList<>()).add(player);
      }
    }
    List<List<String>> lines = new ArrayList<>();
    byRole.forEach(
        (role, players) -> {
          int written = players.stream().mapToInt(PlayerReview::written).sum();
          int placed = players.stream().mapToInt(PlayerReview::placed).sum();
          lines.add(
              List.of(
                  words.role(role),
                  String.join(", ", players.stream().map(PlayerReview::player).toList()),
                  words.say("review.of", placed, written),
                  written == 0
                      ? words.say("review.unknown")
                      : words.say("leader.percent", Math.round(100.0 * placed / written))));
        });
    return new Lines(
        List.of(
            words.say("leader.role"),
            words.say("review.player"),
            words.say("review.placed"),
            words.say("review.held")),
        lines);
  }

  /** On the beat against off it, entries and endings, for each player. */
  public Lines places(Spoken spoken) {
    List<List<String>> lines = new ArrayList<>();
    for (PlayerReview player : spoken.review().players()) {
      Spoken.Slip slip = spoken.slip(player.player());
      List<String> found = slip == null ? List.of() : slip.rules();
      lines.add(
          List.of(
              player.player(),
              placed(player.onbeat()),
              placed(player.offbeat()),
              difference(player.offbeatMinusOnbeatMillis()),
              words.say(
                  found.contains("notHeard")
                      ? "leader.notHeard"
                      : found.contains("lateEntry") ? "leader.entry.late" : "leader.entry.inTime"),
              words.say(
                  found.contains("notHeard")
                      ? "leader.notHeard"
                      : found.contains("lostEnding")
                          ? "leader.ending.lost"
                          : "leader.ending.played")));
    }
    return new Lines(
        List.of(
            words.say("review.player"),
            words.say("leader.onbeat"),
            words.say("leader.offbeat"),
            words.say("leader.difference"),
            words.say("leader.entry"),
            words.say("leader.ending")),
        lines);
  }

  private String placed(PositionReview position) {
    return position.written() == 0
        ? words.say("leader.nothing")
        : words.say("review.of", position.placed(), position.written());
  }

  private String difference(Figure figure) {
    if (!figure.known()) {
      return words.say("review.unknown");
    }
    long millis = Math.round(figure.get());
    String key =
        millis == 0
            ? "leader.difference.none"
            : millis < 0 ? "leader.difference.early" : "leader.difference.late";
    return words.say(key, Math.abs(millis)) + range(figure.interval(), 1);
  }

  private String range(@Nullable Interval interval, double unit) {
    return interval == null
        ? ""
        : words.say("leader.range", signed(interval.low() * unit), signed(interval.high() * unit));
  }

  /** A whole number with a minus sign where it is negative. */
  private static String signed(double value) {
    return Long.toString(Math.round(value)).replace('-', '\u2212');
  }

  /** Who follows whom, a sentence each; where that is not known, why. */
  public List<String> follows(Review review) {
    List<List<@Nullable Double>> gains = review.ensemble().gains();
    if (gains == null) {
      Reason why = review.ensemble().gainsReason();
      String says = why == null ? "" : ": " + speaker.say("reason." + why.code());
      return List.of(words.say("leader.follows.unknown", says));
    }
    List<String> says = new ArrayList<>();
    List<String> open = new ArrayList<>();
    List<PlayerReview> players = review.players();
    List<List<@Nullable Interval>> intervals = review.ensemble().gainsInterval();
    for (int i = 0; i < gains.size() && i < players.size(); i++) {
      for (int j = 0; j < gains.get(i).size() && j < players.size(); j++) {
        Double gain = gains.get(i).get(j);
        if (i != j && gain != null) {
          Interval interval = intervals == null ? null : intervals.get(i).get(j);
          boolean told = interval != null && interval.low() > 0;
          (told ? says : open)
              .add(
                  words.say(
                      told ? "leader.follows" : "leader.follows.pair",
                      players.get(i).player(),
                      signed(gain * 100),
                      players.get(j).player(),
                      range(interval, 100)));
        }
      }
    }
    for (PairReview pair : review.ensemble().pairs()) {
      if (pair.leader() != null) {
        String other = pair.leader().equals(pair.first()) ? pair.second() : pair.first();
        says.add(words.say("leader.leads", pair.leader(), other));
      }
    }
    if (!open.isEmpty()) {
      says.add(words.say("leader.follows.open", String.join("; ", open)));
    }
    return says.isEmpty() ? List.of(words.say("leader.follows.unknown", "")) : says;
  }

  /**
   * What a thinner click would do, a sentence for each player of whom it is foretold; for a band
   * that it is not foretold, and why.
   */
  public List<String> ahead(Review review) {
    List<String> says = new ArrayList<>();
    for (PlayerReview player : review.players()) {
      List<Said> found = new ArrayList<>(ForecastWords.silence(player));
      Said thinner =
          ForecastWords.thinner(
              player, review.meter(), review.stepsPerBeat(), review.toleranceMillis());
      if (thinner != null) {
        found.add(0, thinner);
      }
      found.forEach(one -> says.add(speaker.say(one)));
    }
    if (says.isEmpty() && review.players().size() > 1) {
      says.add(words.say("leader.ahead.band"));
    }
    return says;
  }

  /** Stretches in which somebody was off the part by whole steps. */
  public List<Episode> episodes(Review review) {
    List<Episode> episodes = new ArrayList<>();
    for (PlayerReview player : review.players()) {
      for (Displacement one : player.displacements()) {
        episodes.add(
            new Episode(
                player.player(),
                one.fromBar(),
                one.toBar(),
                one.steps(),
                speaker.say(ShiftWords.of(one.steps(), review.meter(), review.stepsPerBeat()))));
      }
    }
    return episodes;
  }

  /** An episode as a sentence. */
  public String spoken(Episode episode) {
    return words.say(
        "leader.episode",
        episode.player(),
        episode.says(),
        episode.fromBar() + 1,
        episode.toBar() + 1);
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
  public Lines compared(Comparison comparison) {
    List<List<String>> lines = new ArrayList<>();
    for (Comparison.Row row : comparison.rows()) {
      lines.add(
          List.of(
              speaker.say(row.name()),
              figure(row.first()),
              figure(row.second()),
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

  private String figure(Figure figure) {
    return figure.known()
        ? String.format(words.locale(), "%.0f", figure.get()) + range(figure.interval(), 1)
        : words.say("review.unknown");
  }

  // ---------------------------------------------------------------- files

  /** A page for each pupil, as one PDF. */
  public byte[] pages(Spoken spoken) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      PdfFiles.write(
          SlipPages.of(spoken, speaker, Paper.A4),
          spoken.review().title(),
          words.language(),
          bytes);
    } catch (IOException unmade) {
      throw new UncheckedIOException(unmade);
    }
    return bytes.toByteArray();
  }

  /** The figures for a spreadsheet. */
  public byte[] figures(Spoken spoken) {
    return FigureTable.of(spoken.review()).getBytes(StandardCharsets.UTF_8);
  }

  /** Answers, and what was played freely. */
  TurnLines turns() {
    return new TurnLines(words, speaker);
  }

  Words words() {
    return words;
  }
}

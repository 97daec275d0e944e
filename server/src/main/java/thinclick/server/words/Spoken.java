package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Review;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A review in words of one language. In JSON it is the review with {@code words} and {@code next}
 * beside the figures of the ensemble and of each player.
 *
 * @param review the figures
 * @param language of the words, as a language tag
 * @param says to the band, without what comes next
 * @param next what the band does next
 * @param move what becomes of the click; null where something else is to be mended first
 * @param advice what {@code next} says, as a value; null where a review does not say
 * @param clicks what clicks in each stage
 * @param slips for each player, in the review's order
 * @param counts why not everybody has as many notes; null where that needs no word
 */
public record Spoken(
    Review review,
    String language,
    List<Sentence> says,
    String next,
    NextRung.@Nullable Move move,
    @Nullable Advice advice,
    List<String> clicks,
    List<Slip> slips,
    @Nullable String counts) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  /**
   * One sentence.
   *
   * @param text as it is read
   * @param player whom it is about; null for the band
   * @param toOneself as it is said to that player, on whose slip it may stand
   */
  public record Sentence(String text, @Nullable String player, String toOneself) {
    private static Sentence of(Finding finding, Speaker speaker) {
      String text = speaker.say(finding.says());
      String player = finding.player();
      return new Sentence(
          text, player, player == null ? text : speaker.say(ToOneself.of(finding.says())));
    }

    private static Sentence read(JsonNode one) {
      String text = one.path("says").asString("");
      return new Sentence(
          text, Spoken.text(one.path("player")), one.path("saysToOneself").asString(text));
    }

    private void write(ObjectNode one) {
      one.put("says", text);
      if (player != null) {
        one.put("player", player).put("saysToOneself", toOneself);
      }
    }
  }

  /**
   * What is said to one player alone.
   *
   * @param player the player
   * @param says the sentences, the last of them what comes next
   * @param next what this player does next; null where nothing of their own is to be mended
   * @param rules the names of the rules that found something about this player
   */
  public record Slip(String player, List<String> says, @Nullable String next, List<String> rules) {
    public Slip {
      says = List.copyOf(says);
      rules = List.copyOf(rules);
    }

    /** What was played, without what comes next. */
    public List<String> did() {
      return says.isEmpty() ? says : says.subList(0, says.size() - 1);
    }

    /** True where the player played the part of somebody else. */
    public boolean playedAnotherPart() {
      return rules.contains(PlaceRules.OTHER_PART);
    }

    /** True where the player came in late. */
    public boolean cameInLate() {
      return rules.contains(PlaceRules.LATE_ENTRY);
    }

    /** True where the player did not get to the end of the part. */
    public boolean lostTheEnding() {
      return rules.contains(PlaceRules.LOST_ENDING);
    }

    /** True where nothing was heard from the player. */
    public boolean notHeard() {
      return rules.contains(PlaceRules.NOT_HEARD) || nobodyHeard();
    }

    /** True where nothing was heard from anybody else either. */
    boolean nobodyHeard() {
      return rules.contains(PlaceRules.NOBODY_HEARD);
    }
  }

  public Spoken {
    says = List.copyOf(says);
    clicks = List.copyOf(clicks);
    slips = List.copyOf(slips);
  }

  /** The review of a take that stands for itself, said. */
  public static Spoken of(Analysis analysis, Speaker speaker) {
    return of(analysis, List.of(), speaker);
  }

  /**
   * A take's review, said.
   *
   * @param before the outcomes of the takes before it at the same drill, tempo and click plan
   */
  public static Spoken of(Analysis analysis, List<Outcome> before, Speaker speaker) {
    ReviewWords words = ReviewWords.of(analysis, before);
    Said counts = NoteCounts.of(analysis.take());
    List<Slip> slips = new ArrayList<>();
    analysis
        .take()
        .parts()
        .forEach(
            part -> {
              Advice next = words.nextFor(part.player());
              slips.add(
                  new Slip(
                      part.player(),
                      words.slip(part.player()).stream().map(speaker::say).toList(),
                      next == null ? null : speaker.say(next.said(analysis.take())),
                      words.rulesOf(part.player())));
            });
    return new Spoken(
        analysis.review(),
        speaker.language(),
        words.band().stream().map(finding -> Sentence.of(finding, speaker)).toList(),
        speaker.say(words.nextForTheBand().said(analysis.take())),
        words.next().move(),
        words.next().advice(),
        analysis.take().stages().stream()
            .map(
                stage ->
                    speaker.say(
                        ClickWords.of(
                            stage, analysis.take().meter(), analysis.take().stepsPerBeat())))
            .toList(),
        slips,
        counts == null ? null : speaker.say(counts));
  }

  /** A speaker of the language that this is in. */
  public Speaker speaker() {
    return Speaker.of(Locale.forLanguageTag(language));
  }

  /** The prose for the band: the sentences and what comes next. */
  public List<String> prose(Speaker speaker) {
    List<String> prose = new ArrayList<>(says.stream().map(Sentence::text).toList());
    prose.add(speaker.say(Said.of("next.band", next)));
    return List.copyOf(prose);
  }

  /**
   * What comes next, for a place that is headed so: a sentence for the player alone, where there is
   * something to do alone, and one for the band.
   *
   * @param player whose page it is; where nobody has the name, what the band does
   */
  public List<String> nextSteps(String player, Speaker speaker) {
    Slip slip = slip(player);
    boolean alone = review.players().size() == 1;
    if (next.isEmpty()) {
      return List.of();
    }
    if (slip == null || alone || next.equals(slip.next())) {
      String first = next.substring(0, next.offsetByCodePoints(0, 1));
      return List.of(
          speaker.say(
              Said.of(
                  "sentence", first.toUpperCase(Locale.ROOT) + next.substring(first.length()))));
    }
    List<String> steps = new ArrayList<>();
    String own = slip.next();
    if (own != null) {
      steps.add(speaker.say(Said.of("next.own", own)));
    } else {
      steps.add(speaker.say("next.nothing"));
    }
    steps.add(speaker.say(Said.of("next.ofBand", next)));
    return List.copyOf(steps);
  }

  /** What is said to the band and not on this slip already. */
  public List<String> besides(Slip slip) {
    return says.stream()
        .filter(one -> !slip.says().contains(one.text()))
        .filter(one -> !slip.says().contains(one.toOneself()))
        .map(Sentence::text)
        .toList();
  }

  /** True where nothing was heard from anybody: there is nothing to show but that. */
  public boolean nobodyHeard() {
    return slips.stream().anyMatch(Slip::nobodyHeard);
  }

  /** The slip of a player, or null where nobody has the name. */
  public @Nullable Slip slip(String player) {
    return slips.stream().filter(one -> one.player().equals(player)).findFirst().orElse(null);
  }

  /** The review's JSON with the words in it. */
  public ObjectNode toJson() {
    ObjectNode json = MAPPER.valueToTree(review);
    ArrayNode words = json.putArray("words");
    says.forEach(sentence -> sentence.write(words.addObject()));
    json.put("next", next);
    json.put("nextMove", move == null ? null : move.name());
    json.put("nextAdvice", advice == null ? null : advice.name());
    json.put("counts", counts);
    json.put("language", language);
    JsonNode stages = json.get("stages");
    for (int i = 0; i < stages.size(); i++) {
      ((ObjectNode) stages.get(i)).put("click", clicks.get(i));
    }
    JsonNode players = json.get("players");
    for (int i = 0; i < players.size(); i++) {
      ObjectNode player = (ObjectNode) players.get(i);
      Slip slip = slips.get(i);
      slip.says().forEach(player.putArray("words")::add);
      player.put("next", slip.next());
      slip.rules().forEach(player.putArray("findings")::add);
    }
    return json;
  }

  /**
   * Reads what {@link #toJson} wrote, whole or as one player may see it; a review without words has
   * none here.
   */
  public static Spoken fromJson(JsonNode json) {
    Review review = MAPPER.treeToValue(json, Review.class);
    List<Sentence> says = new ArrayList<>();
    for (JsonNode one : json.path("words")) {
      says.add(Sentence.read(one));
    }
    List<Slip> slips = new ArrayList<>();
    for (JsonNode player : json.path("players")) {
      List<String> words = texts(player.path("words"));
      slips.add(
          new Slip(
              player.path("player").asString(""),
              words,
              text(player.path("next")),
              texts(player.path("findings"))));
    }
    List<String> clicks = new ArrayList<>();
    json.path("stages").forEach(stage -> clicks.add(stage.path("click").asString("")));
    return new Spoken(
        review,
        json.path("language").asString("en"),
        says,
        json.path("next").asString(""),
        moveOf(json),
        adviceOf(json),
        clicks,
        slips,
        text(json.path("counts")));
  }

  /** What a review's JSON says comes next, as a value; null where it says nothing of it. */
  public static @Nullable Advice adviceOf(JsonNode review) {
    String advice = text(review.path("nextAdvice"));
    for (Advice one : Advice.values()) {
      if (one.name().equals(advice)) {
        return one;
      }
    }
    return null;
  }

  /** What a review's JSON says becomes of the click; null where it says nothing of it. */
  public static NextRung.@Nullable Move moveOf(JsonNode review) {
    String move = text(review.path("nextMove"));
    for (NextRung.Move one : NextRung.Move.values()) {
      if (one.name().equals(move)) {
        return one;
      }
    }
    return null;
  }

  /** True where a review's JSON finds that nothing was heard from anybody. */
  public static boolean nobodyHeard(JsonNode review) {
    for (JsonNode player : review.path("players")) {
      if (texts(player.path("findings")).contains(PlaceRules.NOBODY_HEARD)) {
        return true;
      }
    }
    return false;
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(one -> texts.add(one.asString("")));
    return texts;
  }

  private static @Nullable String text(JsonNode node) {
    return node.isString() ? node.stringValue() : null;
  }
}

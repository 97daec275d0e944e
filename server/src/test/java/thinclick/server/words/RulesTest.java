package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.Scorer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Each rule alone: what it needs before it speaks, and what it then says. Figures are written into
 * the review of a clean take, so that a rule is tested and not the scorer.
 */
class RulesTest {
  private static final Speaker ENGLISH = Speaker.english();
  private static final JsonMapper JSON = JsonMapper.builder().build();

  /** Mina on the beats, Ilse on the ands, eight bars on all beats and eight in silence. */
  private static final Analysis CLEAN = Scorer.analyse(clean());

  @Test
  void everyRuleHasANameOfItsOwnThatItsFindingsCarry() {
    assertThat(Rules.ALL).extracting(Rule::name).doesNotHaveDuplicates();
    for (Rule rule : Rules.ALL) {
      for (String name : List.of("noisy pad", "two swap parts")) {
        Evidence evidence = Evidence.of(Scorer.analyse(HardTakes.ALL.get(name).get()));
        assertThat(rule.find().apply(evidence)).allMatch(one -> one.rule().equals(rule.name()));
      }
    }
  }

  @Test
  void aCleanTakeHasNoTrouble() {
    assertThat(Rules.apply(Evidence.of(CLEAN)))
        .extracting(Finding::matter)
        .isSubsetOf(Matter.VERDICT, Matter.GOOD, Matter.CAVEAT);
  }

  @Test
  void togetherSaysWhatWasHeldStageByStage() {
    assertThat(says("together", hold(91, 74)))
        .containsExactly("Held together: 91 % on all beats, 74 % without a click.");
  }

  @Test
  void togetherGivesNoVerdictUnderTwelveAttacks() {
    Band band = new Band("Short", 120, 1, Stage.ofBeats(1, 1, 1));
    Take take = band.player("Mina", 0, 2, 4, 6).plays().take();

    assertThat(says("together", Scorer.analyse(take)))
        .containsExactly("There are too few attacks to judge: 4 are written, and 12 are needed.");
  }

  @Test
  void thinnestSaysWhereTheIntervalLeavesItOpen() {
    Analysis open =
        edited(
            review -> {
              stage(review, 1).put("hold", 82.0).put("borderline", true);
              stage(review, 1).putArray("holdInterval").add(71.0).add(90.0);
            });

    assertThat(says("thinnest", open))
        .containsExactly("The hold without a click is borderline: 82 % (between 71 and 90 %).");
    Analysis none = edited(review -> ((ObjectNode) review.get("ensemble")).put("heldThrough", -1));
    assertThat(says("thinnest", none)).containsExactly("No stage was held to 80 %.");
  }

  @Test
  void displacedNamesTheLongestOfSeveralEpisodes() {
    Analysis twice =
        edited(
            review -> {
              ArrayNode episodes = player(review, "Ilse").putArray("displacements");
              episodes.addObject().put("fromBar", 2).put("toBar", 4).put("steps", 1);
              episodes.addObject().put("fromBar", 9).put("toBar", 16).put("steps", -2);
            });

    assertThat(says("displaced", twice))
        .containsExactly(
            "Ilse was off the part two times, nine bars in all; the longest stretch, from bar 10"
                + " to the end, was a beat early.");
    assertThat(next("displaced", twice)).isEqualTo(Advice.BAR_NUMBERS);
  }

  @Test
  void driftSpeaksOnlyWhenItIsClearAndNoBeatHoldsIt() {
    // 1.2 percent of 16 s are 192 ms, known to a third: said to fifties.
    assertThat(says("drift", drift(1, 1.2, .8, 1.6)))
        .containsExactly(
            "All dragged together, by 1.2 % through eight silent bars at 120; by the end of them,"
                + " the pulse was 200 ms behind.");
    assertThat(next("drift", drift(1, -1.2, -1.6, -.8))).isEqualTo(Advice.ISLANDS);
    assertThat(says("drift", drift(1, 0.4, .3, .5))).isEmpty();
    assertThat(says("drift", drift(1, 1.2, -.1, 2.5))).isEmpty();
    assertThat(says("drift", drift(0, 1.2, .8, 1.6))).isEmpty();
  }

  @Test
  void returnsTellAGoodOneFromABadOne() {
    assertThat(says("returns", back(160)))
        .containsExactly(
            "After eight silent bars, the pulse was 160 ms behind when the click came back in bar"
                + " 17.");
    assertThat(next("returns", back(160))).isEqualTo(Advice.SING);
    assertThat(next("returns", back(-160))).isEqualTo(Advice.ISLANDS);
    // A tenth of a beat at 120 is 50 ms.
    assertThat(found("returns", back(-50)))
        .singleElement()
        .satisfies(one -> assertThat(one.matter()).isEqualTo(Matter.GOOD));
  }

  /** Who comes in late and drops more has one count in words, table and picture. */
  @Test
  void whatWasDroppedIsCountedWholeBesideALateEntry() {
    Take late = HardTakes.lateEntry();
    List<Attack> fewer = new ArrayList<>();
    int tariq = 0;
    for (Attack one : late.attacks()) {
      if (!one.player().equals("Tariq") || tariq++ % 6 != 5) {
        fewer.add(one);
      }
    }
    Analysis analysis = Scorer.analyse(late.withAttacks(fewer));
    int dropped = analysis.review().player("Tariq").dropped();

    assertThat(dropped).isGreaterThan(14);
    assertThat(String.join(" ", Spoken.of(analysis, Speaker.english()).slip("Tariq").says()))
        .contains("You came in at bar 3", "You dropped " + dropped + " of 72 notes.");
  }

  @Test
  void droppedAndAddedSpeakFromThreeAndATwentiethOn() {
    assertThat(says("dropped", dropping(2))).isEmpty();
    assertThat(says("dropped", dropping(4))).containsExactly("Mina dropped 4 of 64 notes.");
    assertThat(says("added", adding(2, 90))).isEmpty();
    assertThat(says("added", adding(5, 90))).containsExactly("Mina added 5 notes.");
    assertThat(says("added", adding(5, 7)))
        .containsExactly(
            "Mina sent 5 attacks that nobody wrote, all faint; they may come from the pad.");
  }

  /** Two answers of Mina's to calls of Ilse's, seven attacks each, as the review gives them. */
  @Test
  void answersAreSaidAgainstTheirCallsInBothLanguages() {
    assertThat(says("answers", answers(7, 7, 0, 2)))
        .containsExactly("Mina gave back 14 of the 14 notes that were called, in time.");
    assertThat(says("answers", answers(5, 6, 0, -20)))
        .containsExactly("Mina gave back 11 of the 14 notes that were called, 20 ms early.");
    assertThat(says("answers", answers(7, 6, 2, 12)))
        .containsExactly(
            "Mina gave back 13 of the 14 notes that were called, 12 ms late, and played 4 of their"
                + " own.");
    assertThat(found("answers", answers(7, 6, 2, 12)))
        .extracting(one -> Speaker.of(Locale.GERMAN).say(one.says()))
        .containsExactly(
            "Mina hat 13 von 14 gerufenen Noten wiedergegeben, 12 ms spät, und 4 eigene"
                + " dazugespielt.");
    assertThat(found("answers", answers(7, 7, 0, 2)).get(0).matter()).isEqualTo(Matter.GOOD);
    assertThat(found("answers", answers(5, 6, 0, 2)).get(0).matter()).isEqualTo(Matter.NOTES);
    assertThat(says("answers", answers(0, 0, 0, 0)))
        .as("whoever answered nothing dropped it, which is said of the notes")
        .isEmpty();
  }

  private static Analysis answers(int first, int second, int extra, double later) {
    return edited(
        review -> {
          ArrayNode responses = review.putArray("responses");
          for (int answered : new int[] {first, second}) {
            responses
                .addObject()
                .put("player", "Mina")
                .put("of", "Ilse")
                .put("fromBar", 1)
                .put("toBar", 3)
                .put("called", 7)
                .put("answered", answered)
                .put("extra", extra)
                .put("laterMillis", later)
                .put("spreadMillis", 5.0);
          }
        });
  }

  @Test
  void leanIsSaidAgainstWhatIsNoticedAndAgainstTheChair() {
    // Gaps of half a second: 2.5 percent of them, 12.5 ms, is just noticed.
    assertThat(says("lean", lean("Mina", 12, 0))).isEmpty();
    assertThat(says("lean", lean("Mina", 13, 0)))
        .containsExactly("Mina was steadily 13 ms late against the others.");
    assertThat(says("lean", lean("Mina", -9, 14)))
        .containsExactly(
            "Mina was 9 ms early, but this chair is only known to 14 ms, so there is no verdict.");
    assertThat(found("lean", lean("Mina", 20, 0)))
        .singleElement()
        .satisfies(one -> assertThat(one.next()).isNull()); // reported, not called wrong
  }

  @Test
  void upbeatsAreSaidApartFromDownbeats() {
    assertThat(says("upbeats", upbeats(-22, 1)))
        .containsExactly("Mina\u2019s ands were 22 ms early, and the downbeats centred.");
    assertThat(next("upbeats", upbeats(-22, 1))).isEqualTo(Advice.ANDS_ALONE);
    assertThat(next("upbeats", upbeats(30, 1))).isEqualTo(Advice.TWO_AND_FOUR_AND);
    assertThat(says("upbeats", upbeats(-8, 1))).isEmpty();
  }

  @Test
  void spreadIsWideWhereItPlacesFewerThanFourInFive() {
    // A tolerance of 50 ms places 80 percent at a spread of 39.02 ms.
    assertThat(says("spread", spread(39.0))).isEmpty();
    assertThat(found("spread", spread(39.1)))
        .singleElement()
        .satisfies(one -> assertThat(one.next()).isEqualTo(Advice.EVEN_EIGHTHS));
  }

  @Test
  void steadiestIsSaidOnlyWhereIntervalsPart() {
    assertThat(says("steadiest", spreads(8, 10, 13))).isEmpty();
    assertThat(says("steadiest", spreads(8, 10, 9.5)))
        .singleElement()
        .asString()
        .contains("steadiest chair");
  }

  @Test
  void aLeaderIsNamedOnlyWhereTheGainsPart() {
    assertThat(says("follows", pair(.35, .14, .56, "Ilse")))
        .containsExactly("Mina takes up 40 % (20\u201360 %) of the gap to Ilse.");
    assertThat(says("follows", pair(.35, .14, .56, null))).isEmpty();
    assertThat(says("follows", pair(.35, .05, .65, "Ilse"))).as("sure, but not to 99 %").isEmpty();
  }

  /** A tolerance of 50 ms places four in five at a spread of 39.02 ms. */
  @Test
  void ofThinnerClicksTheThinnestThatWouldHoldIsSaid() {
    assertThat(says("thinner", forecasts(20, 30, 24, 38)))
        .containsExactly(
            "With a thinner click (the one of every fourth bar), expect Mina\u2019s spread near 30 ms (25\u201340);"
                + " that would hold.");
    assertThat(says("thinner", forecasts(20, 30, 30, 50)))
        .containsExactly(
            "With a thinner click (the one of every second bar), expect Mina\u2019s spread near 25 ms (20\u201330);"
                + " that would hold.");
    assertThat(says("thinner", forecasts(30, 50, 40, 60)))
        .singleElement()
        .asString()
        .contains("every second bar")
        .endsWith("that may or may not hold.");
    assertThat(says("thinner", forecasts(40, 60, 50, 70)))
        .singleElement()
        .asString()
        .endsWith("that would not hold yet.");
    assertThat(found("thinner", forecasts(20, 30, 24, 38))).allMatch(Finding::slipOnly);
  }

  @Test
  void whoHoldsTooLittleIsNotToldOfThinnerClicks() {
    Analysis lost =
        edited(
            review -> {
              forecast(player(review, "Mina").putArray("forecasts"), 2, 20, 30);
              player(review, "Mina").put("hold", 74.9);
            });

    assertThat(says("thinner", lost)).isEmpty();
  }

  /** 10 ms there and back is too short to tell a line from its players, whatever a fit says. */
  @Test
  void aLineIsToldFromItsPlayersOnlyWhereItIsLongEnough() {
    assertThat(says("line", line(5, 4, 6)))
        .containsExactly(
            "The pulse slowed by 9 ms a beat from bar 9 to bar 16; what hearing late makes of it and what the"
                + " players make cannot be told apart.");
    assertThat(says("line", line(40, 4, 6)))
        .containsExactly(
            "The pulse slowed by 9 ms a beat from bar 9 to bar 16; hearing each other late makes 4 (3 to 5) of"
                + " that, and the players 5 (4 to 6).");
    assertThat(next("line", line(40, 4, 6))).isEqualTo(Advice.SING);
    assertThat(says("line", line(40, -1, 11)))
        .singleElement()
        .asString()
        .endsWith("and the players kept their tempo.");
    assertThat(next("line", line(40, -1, 11))).isNull();
  }

  /** The choice is the player's own affair, and bears on all that is said of them. */
  @Test
  void howAPlayerHeardTheOthersIsSaidOnTheirSlipWithWhatItMeans() {
    Analysis late = line(40, 4, 6);
    assertThat(says("hearing", late))
        .contains(
            "Mina heard the others 40 ms late: a slowing that this alone may have made is charged to"
                + " nobody.");
    Hearing inTime = new Hearing(Hearing.Mode.IN_TIME, 0);
    Analysis written =
        new Analysis(
            late.take()
                .withParts(
                    late.take().parts().stream()
                        .map(part -> part.edited().hearing(inTime).part())
                        .toList()),
            late.review(),
            late.players(),
            late.pulseMillis());
    String said =
        "Mina heard the others in time, as it is written for them, so nothing Mina played can be put"
            + " down to the line.";
    assertThat(Spoken.of(written, ENGLISH).slip("Mina").says()).contains(said);
    assertThat(Spoken.of(written, ENGLISH).says())
        .extracting(Spoken.Sentence::text)
        .as("to that player alone")
        .doesNotContain(said);
    Analysis alone = edited(review -> player(review, "Ilse").put("standIn", true));
    assertThat(says("hearing", alone)).as("nobody chose").isEmpty();
  }

  @Test
  void standInsAreNamedAsSuch() {
    Analysis one = edited(review -> player(review, "Ilse").put("standIn", true));

    assertThat(says("standIns", one)).containsExactly("A stand-in sat in one chair.");
    Analysis all =
        edited(
            review -> review.get("players").forEach(it -> ((ObjectNode) it).put("standIn", true)));
    assertThat(says("standIns", all)).containsExactly("Stand-ins sat in both chairs.");
  }

  @Test
  void aloneInSilenceIsNotJudged() {
    Band band = new Band("Alone", 120, 1, Stage.ofBeats(4, 1, 1, 2, 3, 4), Stage.ofBeats(4, 1));
    Take take = band.player("Mina", 0, 2, 4, 6).plays().take();

    assertThat(says("aloneInSilence", Scorer.analyse(take)))
        .containsExactly(
            "Alone in silence there is nobody to be together with: bars 5 to 8 are not judged.");
  }

  @Test
  void aPlayerNobodyHeardIsSaidOnceAndNotAsALostEnding() {
    Take take = clean();
    List<Attack> withoutIlse =
        take.attacks().stream().filter(attack -> !attack.player().equals("Ilse")).toList();
    Analysis analysis = Scorer.analyse(take.withAttacks(withoutIlse));

    assertThat(says("notHeard", analysis))
        .containsExactly(
            "Nothing was heard from Ilse: 64 attacks are written, and none was played.");
    assertThat(says("lostEnding", analysis)).isEmpty();
    assertThat(says("lateEntry", analysis)).isEmpty();
    assertThat(says("dropped", analysis)).isEmpty();
  }

  /** One of a class is not left out because three sentences are the most. */
  @Test
  void severalNobodyHeardAreSaidAtOnceAndToEachAlone() {
    Take take = HardTakes.turnedAround();
    String first = take.parts().get(0).player();
    Spoken some = spokenOf(take, attack -> attack.player().equals(first));
    List<String> others =
        take.parts().stream().map(Part::player).filter(name -> !name.equals(first)).toList();
    assertThat(others).hasSizeBetween(2, 4);
    assertThat(some.prose(ENGLISH))
        .filteredOn(says -> says.startsWith("Nothing was heard"))
        .singleElement()
        .satisfies(says -> assertThat(says).contains(others));
    others.forEach(
        name ->
            assertThat(some.slip(name).says().get(0)).startsWith("Nothing was heard from you: "));
  }

  /** Nothing was heard: that tells of the sound or the keys, and nothing of the figure. */
  @Test
  void whereNobodyWasHeardThatIsSaidOnceAndTheSameIsPlayedOnceMore() {
    Take take = HardTakes.turnedAround();
    Spoken nobody = spokenOf(take, attack -> false);
    String once = "Nothing was heard from anybody, so there is nothing to judge.";
    String next = "look at the sound check and the keys, then play the same once more";

    assertThat(nobody.nobodyHeard()).isTrue();
    assertThat(nobody.prose(ENGLISH)).containsExactly(once, "Next: " + next + ".");
    assertThat(nobody.move()).isNull();
    assertThat(nobody.slips())
        .allSatisfy(slip -> assertThat(slip.says()).containsExactly(once, "Next: " + next + "."));
    assertThat(Outcome.of(nobody.review()).lostShare()).as("nobody is known to be lost").isZero();
    assertThat(NextRung.after(List.of(Outcome.of(nobody.review()))))
        .isEqualTo(NextRung.Move.NO_VERDICT);
    assertThat(spokenOf(take, attack -> true).nobodyHeard()).isFalse();
  }

  /** Whoever practises against stand-ins and is not heard has not lost half the band. */
  @Test
  void whereOnlyStandInsWereHeardNothingIsSaidOfTheFigure() {
    Take take = HardTakes.turnedAround();
    String first = take.parts().get(0).player();
    List<Part> parts =
        take.parts().stream()
            .map(part -> part.edited().standIn(!part.player().equals(first)).part())
            .toList();
    Spoken heard = spokenOf(take.withParts(parts), attack -> !attack.player().equals(first));

    assertThat(heard.prose(ENGLISH))
        .containsExactly(
            "Nothing was heard but the stand-ins, so there is nothing to judge.",
            "Next: look at the sound check and the keys, then play the same once more.");
    assertThat(heard.slip(first).says().get(0)).isEqualTo(heard.says().get(0).text());
  }

  /** One of two who was not heard is no half of a band that was lost. */
  @Test
  void oneWhoWasNotHeardSendsNobodyDownTheLadder() {
    Take take = clean();
    Spoken without = spokenOf(take, attack -> !attack.player().equals("Ilse"));

    assertThat(without.move()).isNull();
    assertThat(without.advice()).isEqualTo(Advice.CHECK_THE_SOUND);
    assertThat(without.nobodyHeard()).isFalse();
    assertThat(without.slip("Ilse").says())
        .containsExactly(
            "Nothing was heard from you: 64 attacks are written, and none was played.",
            "Next: look at the sound check and the keys, then play the same once more.");
    assertThat(Outcome.of(without.review()).lostShare()).isZero();
    assertThat(Outcome.notHeard(without.review())).containsExactly("Ilse");
  }

  private static Spoken spokenOf(Take take, Predicate<Attack> heard) {
    List<Attack> attacks = take.attacks().stream().filter(heard).toList();
    return Spoken.of(Scorer.analyse(take.withAttacks(attacks)), ENGLISH);
  }

  @Test
  void aPartThatIsTheSameEveryStepCannotShowAShift() {
    Analysis row =
        Scorer.analyse(
            new Band("Row", 120, 1, Stage.ofBeats(4, 1, 1, 2, 3, 4))
                .player(Part.of("Mina", 0, IntStream.range(0, 32).boxed().toList()))
                .plays()
                .take());

    assertThat(found("cannotTell", row)).allMatch(Finding::slipOnly);
    assertThat(says("cannotTell", row))
        .containsExactly(
            "A shift of an eighth would not show: Mina\u2019s part is the same an eighth later.");
  }

  private static Take clean() {
    return cleanBut(step -> false, 0, 0);
  }

  private static Take cleanBut(IntPredicate drops, int added, int velocity) {
    Band band = new Band("Clean", 120, 4, Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 1));
    Band.Player mina = band.player("Mina", 0, 2, 4, 6).spread(8).drops(drops);
    for (int i = 0; i < added; i++) {
      mina.adds(3 + 20 * i, velocity);
    }
    mina.plays();
    return band.player("Ilse", 1, 3, 5, 7).spread(8).plays().take();
  }

  private static Analysis dropping(int count) {
    return Scorer.analyse(cleanBut(step -> step % 32 == 4 && step / 32 < count, 0, 0));
  }

  private static Analysis adding(int count, int velocity) {
    return Scorer.analyse(cleanBut(step -> false, count, velocity));
  }

  private static Analysis hold(double first, double second) {
    return edited(
        review -> {
          stage(review, 0).put("hold", first);
          stage(review, 1).put("hold", second);
        });
  }

  private static Analysis drift(int stage, double percent, double low, double high) {
    return edited(
        review -> {
          ObjectNode one = stage(review, stage);
          one.put("driftPercent", percent).remove("driftPercentReason");
          one.putArray("driftPercentInterval").add(low).add(high);
        });
  }

  private static Analysis back(double millis) {
    return edited(
        review ->
            ((ObjectNode) review.get("ensemble"))
                .putArray("returns")
                .addObject()
                .put("bar", 16)
                .put("step", 128)
                .put("silentBars", 8)
                .put("errorMillis", millis));
  }

  private static Analysis lean(String name, double millis, double uncertainty) {
    return edited(
        review -> {
          figure(player(review, name), "leanMillis", millis, 2);
          player(review, name).put("uncertaintyMillis", uncertainty);
        });
  }

  private static Analysis upbeats(double off, double on) {
    return edited(
        review -> {
          figure((ObjectNode) player(review, "Mina").get("offbeat"), "leanMillis", off, 2);
          figure((ObjectNode) player(review, "Mina").get("onbeat"), "leanMillis", on, 2);
        });
  }

  private static Analysis spread(double millis) {
    return edited(review -> figure(player(review, "Mina"), "spreadMillis", millis, 3));
  }

  private static Analysis spreads(double mina, double ilse, double minasHigh) {
    return edited(
        review -> {
          figure(player(review, "Mina"), "spreadMillis", mina, minasHigh - mina);
          figure(player(review, "Ilse"), "spreadMillis", ilse, 1);
        });
  }

  /** Mina follows Ilse by so much more than Ilse Mina. */
  private static Analysis pair(
      double difference, double low, double high, @Nullable String leader) {
    return edited(
        review -> {
          ObjectNode ensemble = (ObjectNode) review.get("ensemble");
          ArrayNode gains = ensemble.putArray("gains");
          gains.addArray().addNull().add(.4);
          gains.addArray().add(.05).addNull();
          ArrayNode intervals = ensemble.putArray("gainsInterval");
          intervals.addArray().addNull().addArray().add(.2).add(.6);
          intervals.addArray().addNull().addNull();
          ObjectNode pair = ensemble.putArray("pairs").addObject();
          pair.put("first", "Mina").put("second", "Ilse").put("leader", leader);
          pair.put("difference", difference);
          pair.putArray("differenceInterval").add(low).add(high);
        });
  }

  private static Analysis forecasts(double low, double high, double lowThin, double highThin) {
    return edited(
        review -> {
          ArrayNode forecasts = player(review, "Mina").putArray("forecasts");
          forecast(forecasts, 2, low, high);
          forecast(forecasts, 4, lowThin, highThin);
        });
  }

  private static void forecast(ArrayNode forecasts, int everyBars, double low, double high) {
    ObjectNode one = forecasts.addObject();
    one.putObject("stage").put("bars", 8).put("everyBars", everyBars).putArray("beats").add(1);
    figure(one, "spreadMillis", (low + high) / 2, (high - low) / 2);
    one.putNull("returnMillis").put("returnMillisReason", "tooFew: none");
  }

  /** Mina and Ilse hear each other so late, and slowed by 5 ms a beat between these two ends. */
  private static Analysis line(double heardLate, double low, double high) {
    ObjectNode review = JSON.valueToTree(CLEAN.review());
    ObjectNode delay = ((ObjectNode) review.get("ensemble")).putObject("delay");
    delay.put("fromStep", 64).put("toStep", 128).put("measuredMillis", 9).put("toldApart", true);
    figure(delay, "networkMillis", 4, 1);
    figure(delay, "playersMillis", 5, (high - low) / 2);
    Hearing hearing = new Hearing(Hearing.Mode.AS_IT_ARRIVES, heardLate);
    Take take = clean();
    return new Analysis(
        take.withParts(
            take.parts().stream().map(part -> part.edited().hearing(hearing).part()).toList()),
        JSON.treeToValue(review, Review.class),
        CLEAN.players(),
        CLEAN.pulseMillis());
  }

  private static void figure(ObjectNode of, String name, double value, double half) {
    of.put(name, value).remove(name + "Reason");
    of.putArray(name + "Interval").add(value - half).add(value + half);
  }

  private static ObjectNode stage(ObjectNode review, int index) {
    return (ObjectNode) review.get("stages").get(index);
  }

  private static ObjectNode player(ObjectNode review, String name) {
    for (var one : review.get("players")) {
      if (one.get("player").stringValue().equals(name)) {
        return (ObjectNode) one;
      }
    }
    throw new IllegalArgumentException(name);
  }

  private static Analysis edited(Consumer<ObjectNode> edit) {
    ObjectNode review = JSON.valueToTree(CLEAN.review());
    edit.accept(review);
    return new Analysis(
        CLEAN.take(), JSON.treeToValue(review, Review.class), CLEAN.players(), CLEAN.pulseMillis());
  }

  private static List<Finding> found(String rule, Analysis analysis) {
    return Rules.ALL.stream()
        .filter(one -> one.name().equals(rule))
        .findFirst()
        .orElseThrow()
        .find()
        .apply(Evidence.of(analysis));
  }

  private static List<String> says(String rule, Analysis analysis) {
    return found(rule, analysis).stream().map(one -> ENGLISH.say(one.says())).toList();
  }

  private static Advice next(String rule, Analysis analysis) {
    return found(rule, analysis).get(0).next();
  }
}

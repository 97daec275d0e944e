package thinclick.client.window.wall;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.LinkState;
import thinclick.client.window.lectern.NextStep;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.ClickWords;
import thinclick.server.words.NextRung.Move;
import thinclick.server.words.Outcome;
import thinclick.server.words.Quantity;
import thinclick.server.words.Speaker;
import thinclick.server.words.StageLines;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** From the room to what hangs on the wall. */
public final class WallModel {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final int MOST_TITLE_WORDS = 6;

  private final Words words;
  private final Speaker speaker;
  private final NextStep steps;
  private @Nullable ReviewReady seen;
  private @Nullable WallPage verdict;

  public WallModel(Words words) {
    this.words = words;
    this.speaker = Speaker.of(words.locale());
    this.steps = new NextStep(words);
  }

  /** The page for the room as it stands. */
  public WallPage page(RoomState room, TakeMoment moment) {
    remember(room);
    if (!room.inside()) {
      return WallPage.saying("", words.say("wall.nobody"), "");
    }
    if (room.link() == LinkState.AWAY) {
      return WallPage.saying("", words.say("wall.lost"), "");
    }
    return switch (room.phase()) {
      case GATHERING -> WallPage.saying(words.say("wall.word"), room.word(), room.address());
      case DEALT -> WallPage.saying("", title(room), words.say("wall.read"));
      case COUNT_IN, TAKE -> taking(room, moment);
      case REVIEW -> verdict(room);
    };
  }

  /** Keeps what a review says, whether or not it is shown: what comes next hangs on it. */
  public void remember(RoomState room) {
    ReviewReady review = room.review();
    if (!Objects.equals(seen, review)) {
      seen = review;
      verdict = null;
      steps.remember(room);
    }
  }

  private static String title(RoomState room) {
    Dealt dealt = room.dealt();
    String title = dealt == null ? "" : dealt.title();
    String[] pieces = title.split("\\s+", -1);
    return pieces.length <= MOST_TITLE_WORDS
        ? title
        : String.join(" ", Arrays.asList(pieces).subList(0, MOST_TITLE_WORDS)) + " \u2026";
  }

  private WallPage taking(RoomState room, TakeMoment moment) {
    return switch (moment.part()) {
      case NONE -> WallPage.saying("", title(room), "");
      case BEFORE ->
          WallPage.saying(
              "", words.say("wall.seconds", moment.secondsToCountIn()), words.say("wall.soon"));
      case COUNT_IN -> // as it is called, so that nobody takes it for the number of a bar
          WallPage.saying(
              "", speaker.say(Speaker.number(moment.count())), words.say("wall.countIn"));
      case PLAYING ->
          WallPage.saying("", words.say("wall.bar", moment.bar() + 1), toNext(room, moment));
      case OVER -> WallPage.saying("", words.say("wall.over"), "");
    };
  }

  private String toNext(RoomState room, TakeMoment moment) {
    Dealt dealt = room.dealt();
    if (dealt == null || moment.barsToNextStage() == 0) {
      return words.say("wall.last");
    }
    List<Stage> stages = dealt.stages();
    Stage now = stages.get(moment.stage());
    Stage next = stages.get(moment.stage() + 1);
    boolean thinner = clicksPerBar(next, dealt) < clicksPerBar(now, dealt);
    return words.say(thinner ? "wall.thins" : "wall.changes", moment.barsToNextStage());
  }

  private static double clicksPerBar(Stage stage, Dealt dealt) {
    return (double) stage.clickedSteps(dealt.meter(), dealt.stepsPerBeat()).size() / stage.bars();
  }

  /** Made once for a review: reading one takes longer than a look at the clock may. */
  private WallPage verdict(RoomState room) {
    WallPage made = verdict;
    if (made == null) {
      made = reviewed(room);
      verdict = made;
    }
    return made;
  }

  private WallPage reviewed(RoomState room) {
    Review review = read(room);
    Dealt dealt = room.dealt();
    if (review == null || dealt == null) {
      return WallPage.saying("", words.say("wall.over"), "");
    }
    if (Outcome.nobodyHeard(review)) {
      return WallPage.saying("", words.say("wall.nothing"), "");
    }
    if (!review.ensemble().hold().known() || Outcome.of(review).tooFew()) {
      return WallPage.saying("", words.say("wall.few"), "");
    }
    List<WallPage.Stretch> ribbon = new ArrayList<>();
    for (StageReview stage : review.stages()) {
      boolean known = stage.hold().known();
      double hold = known ? stage.hold().get() : -100;
      boolean several = review.stages().size() > 1;
      String label = known && several ? words.say("wall.held", percent(stage.hold())) : "";
      ribbon.add(
          new WallPage.Stretch(
              stage.toBar() - stage.fromBar(), hold / 100, stage.clicksPerBar(), label));
    }
    String together = words.say("wall.together", percent(review.ensemble().hold()));
    List<Stage> stages = new ClickPlan(dealt.stages()).stages();
    boolean told =
        stages.size() >= ribbon.size(); // fewer where the take was stopped before its end
    List<Stage> played = told ? stages.subList(0, ribbon.size()) : List.of();
    int through = review.ensemble().heldThrough();
    List<List<String>> clicks = told ? clicks(dealt, played) : List.of();
    List<String> keys = told && through >= 0 ? keys(dealt, played.get(through)) : List.of();
    return new WallPage(together, "", "", ribbon, through, clicks, "")
        .within(nexts(steps.move()), keys);
  }

  private String percent(Figure hold) {
    return Quantity.percent(hold).shown(words.locale());
  }

  /** What clicked in each stage, then the same in fewer words; one alone follows what it held. */
  private List<List<String>> clicks(Dealt dealt, List<Stage> stages) {
    if (stages.size() == 1) {
      return keys(dealt, stages.get(0)).stream().map(List::of).toList();
    }
    return List.of(
        stages.stream().map(stage -> called(dealt, stage)).toList(),
        stages.stream().map(stage -> briefly(dealt, stage)).toList());
  }

  /** What a stage was held on, as the review has it; then in fewer words. */
  private List<String> keys(Dealt dealt, Stage stage) {
    String on = speaker.say(ClickWords.on(stage, dealt.meter(), dealt.stepsPerBeat()));
    return List.of(on, called(dealt, stage), briefly(dealt, stage));
  }

  private String called(Dealt dealt, Stage stage) {
    return speaker.say(ClickWords.of(stage, dealt.meter(), dealt.stepsPerBeat()));
  }

  /** As it is called, or as a line of the click plan has it. */
  private String briefly(Dealt dealt, Stage stage) {
    String called = speaker.say(ClickWords.briefly(stage, dealt.meter(), dealt.stepsPerBeat()));
    String line = new StageLines(speaker, dealt.meter(), dealt.stepsPerBeat(), null).briefly(stage);
    return line.length() < called.length() ? line : called;
  }

  /** What comes next, then the same in fewer words where there are fewer. */
  private List<String> nexts(@Nullable Move move) {
    if (move == null) {
      return List.of("");
    }
    return switch (move) {
      case UP -> List.of(words.say("wall.next.up"));
      case ONCE_MORE -> List.of(words.say("wall.next.onceMore"), words.say("wall.next.again"));
      case STAY -> List.of(words.say("wall.next.stay"), words.say("wall.next.again"));
      case DOWN, DOWN_TWO ->
          List.of(words.say(steps.fullest() ? "wall.next.slower" : "wall.next.down"));
      case NO_VERDICT -> List.of("");
    };
  }

  private static @Nullable Review read(RoomState room) {
    if (room.review() == null) {
      return null;
    }
    try {
      return MAPPER.treeToValue(room.review().review(), Review.class);
    } catch (JacksonException | BadInput unreadable) {
      return null;
    }
  }
}

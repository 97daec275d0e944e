package thinclick.client.window.review;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ChangeListener;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.session.PastTakes;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Seat;
import thinclick.client.window.words.Refused;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.HistoryPicture;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.PlayerPicture;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.picture.PlayerSheet.Section;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Review;
import thinclick.server.words.Quantity;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;

/**
 * A review as one player at this computer reads it, from what that player's own connection was
 * told: the own slip first, then the band, the figures, the last takes.
 */
public final class ReviewModel {
  private static final Logger LOG = LoggerFactory.getLogger(ReviewModel.class);

  private final Seat seat;
  private final Words words;
  private final Speaker speaker;
  private final BandTables tables;
  private final Executor windowThread;
  private final ReadOnlyObjectWrapper<@Nullable ReviewPage> page = new ReadOnlyObjectWrapper<>();
  private final ChangeListener<RoomState> onRoom = (any, old, now) -> follow(old, now);
  private final ChangeListener<PastTakes.Told> onTold = (any, old, now) -> told(now);

  /**
   * @param windowThread where the page is set
   */
  public ReviewModel(Seat seat, Words words, Executor windowThread) {
    this.seat = seat;
    this.words = words;
    this.windowThread = windowThread;
    speaker = Speaker.of(words.language()).withDaysAsIn(words.locale());
    tables = new BandTables(words);
    seat.stateProperty().addListener(onRoom);
    seat.past().toldProperty().addListener(onTold);
  }

  /** Nobody reads it any more. */
  public void close() {
    seat.stateProperty().removeListener(onRoom);
    seat.past().toldProperty().removeListener(onTold);
  }

  /** The review of the last take; null where there is none that can be read. */
  public ReadOnlyObjectProperty<@Nullable ReviewPage> pageProperty() {
    return page.getReadOnlyProperty();
  }

  /** Asks for this player's take as a file. */
  void keepTake(Consumer<KeptTake> then, Consumer<Refused> refused) {
    seat.keepTake(then, refused);
  }

  private void follow(RoomState old, RoomState now) {
    if (!now.inside()) {
      page.set(null);
    } else if (!Objects.equals(old.review(), now.review())) {
      read(now);
    }
  }

  private void read(RoomState room) {
    ReviewReady ready = room.review();
    Spoken spoken = ready == null ? null : spoken(ready);
    if (ready == null || spoken == null) {
      page.set(null);
      return;
    }
    Part part = room.ownPart();
    String own = part == null ? "" : part.player();
    // Once all who follow the room have heard of it: what the page offers to do next is theirs.
    windowThread.execute(() -> set(ready, spoken, own, null));
    Take take = OwnAnalysis.take(room, seat.take(), uncertaintyMillis(spoken.review(), own));
    if (take == null || own.isEmpty()) {
      return;
    }
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(() -> OwnAnalysis.of(take))
            .thenAcceptAsync(
                analysis -> {
                  if (analysis != null) {
                    set(ready, spoken, own, analysis);
                  }
                },
                windowThread);
  }

  /** How far the host took this player's stamps to be off; nothing where it told no figures. */
  private static double uncertaintyMillis(Review review, String own) {
    return review.players().stream()
        .filter(player -> player.player().equals(own))
        .mapToDouble(PlayerReview::uncertaintyMillis)
        .findFirst()
        .orElse(0);
  }

  private void set(ReviewReady ready, Spoken spoken, String own, @Nullable Analysis analysis) {
    if (ready.equals(seat.state().review())) {
      page.set(page(ready.takeId(), spoken, own, analysis));
    }
  }

  /** The course has come: the page that is open shows it. */
  private void told(PastTakes.Told now) {
    ReviewPage open = page.get();
    ReviewReady ready = seat.state().review();
    Spoken spoken = ready == null ? null : spoken(ready);
    if (open != null && spoken != null && open.takeId().equals(now.takeId())) {
      page.set(page(open.takeId(), spoken, open.own(), open.analysis()));
    }
  }

  private static @Nullable Spoken spoken(ReviewReady ready) {
    try {
      return Spoken.fromJson(ready.review());
    } catch (JacksonException | BadInput unreadable) {
      LOG.warn("a review that cannot be read: {}", unreadable.getMessage());
      return null;
    }
  }

  private ReviewPage page(String take, Spoken spoken, String own, @Nullable Analysis analysis) {
    Spoken.Slip slip = spoken.slip(own);
    return new ReviewPage(
        take, own, content(spoken, own, analysis), analysis, slip != null && slip.notHeard());
  }

  private PlayerSheet.Content content(Spoken spoken, String own, @Nullable Analysis analysis) {
    Review review = spoken.review();
    Spoken.Slip slip = spoken.slip(own);
    List<Section> sections = new ArrayList<>();
    List<String> says = spoken.says().stream().map(Spoken.Sentence::text).toList();
    boolean played = slip != null && !slip.says().isEmpty();
    if (slip != null && played) {
      sections.add(Section.words("slip", null, led(slip.did())));
    } else {
      sections.add(Section.words("prose", null, says));
    }
    List<String> steps = spoken.nextSteps(own, spoken.speaker());
    sections.add(Section.words("next-steps", words.say("review.next.head"), steps));
    if (analysis != null && slip != null && !slip.notHeard()) {
      sections.add(
          Section.picture(
              "attacks", PlayerPicture.heading(speaker), PlayerPicture.of(analysis, own, speaker)));
    }
    if (slip != null && played) {
      List<String> further = spoken.besides(slip);
      if (!further.isEmpty()) {
        sections.add(Section.words("prose", words.say("review.band"), further));
      }
    }
    if (!spoken.nobodyHeard()) {
      sections.addAll(tables.of(spoken));
    }
    Drawing course = course(own);
    if (course != null) {
      sections.add(Section.picture("course", words.say("review.course"), course));
    }
    return new PlayerSheet.Content(review.title(), head(review, own), sections);
  }

  /** The verdict in a line of its own, what was found beside it as prose below. */
  private static List<String> led(List<String> did) {
    return did.size() < 3 ? did : List.of(did.get(0), String.join(" ", did.subList(1, did.size())));
  }

  /** Whose it is, and what was played. */
  private String head(Review review, String own) {
    String what =
        words.say(
            "review.what",
            review.meter().toString(),
            Quantity.exact(review.tempo()).shown(words.locale()),
            Quantity.millis(review.toleranceMillis(), null).shown(words.locale()));
    Quantity allowed = leanAllowed(review, own);
    if (allowed.side() != 0) {
      String side = allowed.side() < 0 ? "review.lean.early" : "review.lean.late";
      what =
          words.say(
              "review.what.allowed", what, words.say(side, allowed.size().shown(words.locale())));
    }
    if (own.isEmpty()) {
      boolean any =
          review.players().stream()
              .anyMatch(player -> leanAllowed(review, player.player()).side() != 0);
      return any ? words.say("review.what.leans", what) : what;
    }
    return words.say("review.whose", own, what);
  }

  /** What of a lean is not held against the player, so that the strip moves with it. */
  private static Quantity leanAllowed(Review review, String own) {
    PlayerReview player = review.player(own);
    Double charged = player == null ? null : player.chargedLeanMillis();
    if (player == null || charged == null || !player.leanMillis().known()) {
      return Quantity.millis(0, null);
    }
    return Quantity.millis(player.leanMillis().get() - charged, null);
  }

  /** The course over the last takes, of today or of weeks; null before the second. */
  private @Nullable Drawing course(String own) {
    CourseSoFar course = seat.past().told().course();
    JsonNode told = course == null ? null : own.isEmpty() ? course.band() : course.own();
    if (told == null) {
      return null;
    }
    try {
      List<CourseSheet> sheets = HistoryJson.read(told);
      return sheets.stream().allMatch(sheet -> sheet.takes().size() < 2)
          ? null
          : HistoryPicture.inReview(sheets, ZoneId.systemDefault(), speaker);
    } catch (BadInput unreadable) {
      LOG.warn("a course that cannot be read: {}", unreadable.getMessage());
      return null;
    }
  }
}

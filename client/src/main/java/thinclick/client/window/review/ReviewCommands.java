package thinclick.client.window.review;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import thinclick.client.window.words.FromAfar;
import thinclick.client.window.words.Words;
import thinclick.protocol.disk.SafeName;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.engraving.Paper;
import thinclick.server.export.DrawingFiles;
import thinclick.server.export.DrawingPdf;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.scoring.Analysis;

/** What can be done with a review: listen again, keep it, set up what comes next. */
public final class ReviewCommands {
  private final Words words;
  private final ListenSound sound;
  private final MonotonicClock clock;
  private final Path folder;
  private final Next next;
  private final Executor windowThread;
  private final ReadOnlyBooleanWrapper listening = new ReadOnlyBooleanWrapper();
  private int listened;
  private final ReadOnlyStringWrapper heard = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  /**
   * What comes next, as the lectern proposes it.
   *
   * @param says the proposal as a sentence; empty where there is none or another leads
   * @param can whether it can be set up now
   * @param changes whether it is another drill, click or tempo than before
   * @param lesson what the lesson's key does where it does not change; empty outside a lesson
   * @param setUp sets it up
   */
  public record Next(
      Supplier<String> says,
      BooleanSupplier can,
      BooleanSupplier changes,
      Supplier<String> lesson,
      Runnable setUp) {}

  /**
   * @param folder where reviews are kept
   * @param windowThread where it is said that what was listened to is over
   */
  public ReviewCommands(
      Words words,
      ListenSound sound,
      MonotonicClock clock,
      Path folder,
      Next next,
      Executor windowThread) {
    this.words = words;
    this.sound = sound;
    this.clock = clock;
    this.folder = folder;
    this.next = next;
    this.windowThread = windowThread;
  }

  /** What is being listened to, a sentence; empty for nothing. */
  ReadOnlyStringProperty heardProperty() {
    return heard.getReadOnlyProperty();
  }

  /** What was kept last and where, a sentence; empty for nothing. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** Whether a take that is played again is heard. */
  ReadOnlyBooleanProperty audibleProperty() {
    return sound.audibleProperty();
  }

  /** Whether one is being listened to. */
  ReadOnlyBooleanProperty listeningProperty() {
    return listening.getReadOnlyProperty();
  }

  String next() {
    return next.says().get();
  }

  boolean canSetUp() {
    return next.can().getAsBoolean();
  }

  boolean nextChanges() {
    return next.changes().getAsBoolean();
  }

  /** What the lesson goes on with, in which the same key does it; empty outside a lesson. */
  String lessonStep() {
    return next.lesson().get();
  }

  void setUp() {
    next.setUp().run();
  }

  void listen(ReviewPage page, boolean pulse) {
    Analysis analysis = page.analysis();
    if (analysis != null) {
      sound.playAgain(
          pulse
              ? Listening.againstPulse(analysis, page.own())
              : Listening.againstClick(analysis, page.own()),
          Listening.from(analysis.take(), clock.nanos()));
      heard.set(words.say(pulse ? "review.listening.pulse" : "review.listening.click"));
      listening.set(true);
      int now = ++listened;
      CompletableFuture.delayedExecutor(
              Listening.lastsMillis(analysis.take()), TimeUnit.MILLISECONDS, windowThread)
          .execute(() -> over(now));
    }
  }

  void silence() {
    sound.stopAgain();
    heard.set("");
    listening.set(false);
  }

  /** Another page is turned to: nothing sounds any more, and what was kept is told no longer. */
  void turned() {
    silence();
    says.set("");
  }

  /** It has come to its end by itself, unless it was stopped or another is heard. */
  private void over(int one) {
    if (one == listened && listening.get()) {
      silence();
    }
  }

  /**
   * Keeps the take as its file: whole where the leader shares it, else the part alone of the player
   * whose review it is.
   *
   * @param whose the player's name where several read here, for the file's; else empty
   */
  void keepTake(ReviewModel asking, String whose) {
    says.set(words.say("review.take.asked"));
    asking.keepTake(
        kept -> {
          byte[] bytes = FileCodec.write(kept.take());
          String said = kept.whole() ? "review.take.whole" : "review.take.own";
          keep(named(kept.take().title(), whose), "take.json", bytes, said);
        },
        why -> says.set(notSaved(new FromAfar(words).say(why))));
  }

  private String notSaved(String why) {
    return Words.sentence(words.say("review.saved.not", why));
  }

  private String named(String title, String whose) {
    return whose.isEmpty() ? title : words.say("review.file", title, whose);
  }

  private void keep(String title, String kind, byte[] bytes, String said) {
    try {
      Files.createDirectories(folder);
      Path file = SafeName.write(folder, title, kind, bytes);
      says.set(words.say(said, file.toString()));
    } catch (IOException unwritable) {
      says.set(notSaved(String.valueOf(unwritable.getMessage())));
    }
  }

  /**
   * Keeps the review under a name that is not taken yet.
   *
   * @param whose the player's name where several read here, for the file's; else empty
   */
  void save(ReviewPage page, String kind, String whose) {
    Paper paper = Paper.usualIn(words.locale());
    byte[] bytes =
        kind.equals("pdf")
            ? DrawingPdf.pdf(PlayerSheet.pages(page.content(), paper), paper, words.language())
            : DrawingFiles.svg(PlayerSheet.of(page.content()));
    keep(named(page.content().title(), whose), kind, bytes, "review.saved");
  }
}

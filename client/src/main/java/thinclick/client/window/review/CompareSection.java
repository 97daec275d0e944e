package thinclick.client.window.review;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.session.PastTakes;
import thinclick.client.window.words.PastWords;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.AnswerMessage.CourseSoFar;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.scoring.Review;
import thinclick.server.words.Comparison;

/** The take beside the last one like it, once the leader asks for it. */
final class CompareSection {
  private final PastTakes past;
  private final Words words;
  private final LikeTakes likes;
  private final Keeping keeping;
  private final SectionNodes sections = new SectionNodes(new SharedColumns());
  private final VBox box = new VBox();
  private final Label head;
  private final Button ask;
  private @Nullable Review review;
  private boolean open;
  private Palette palette = Palette.LIGHT;

  CompareSection(PastTakes past, Words words) {
    this.past = past;
    this.words = words;
    likes = new LikeTakes(words);
    keeping = new Keeping(words, "compared-kept");
    head = Prose.of(words.say("leader.compare.head"));
    head.getStyleClass().add("heading");
    ask = keeping.button("review-compare", "leader.compare", this::open);
    box.setId("review-compared");
    box.getStyleClass().addAll("stacked", "ruled");
    past.toldProperty().addListener(any -> again());
  }

  /** Where it stands, with the button that opens it. */
  VBox box() {
    return box;
  }

  /** Closes it; the next time it is of this review. */
  void of(@Nullable Review now) {
    review = now;
    open = false;
    keeping.clear();
    box.getChildren().setAll(head, ask);
  }

  /** Shows what is told so far; the rest comes by itself soon after the review. */
  private void open() {
    open = true;
    again();
  }

  /** Shows it in other colours. */
  void dress(Palette wanted) {
    if (wanted != palette) {
      palette = wanted;
      again();
    }
  }

  private void again() {
    Review now = review;
    if (!open || now == null) {
      return;
    }
    box.getChildren().setAll(head, ask);
    PastTakes.Told told = past.told();
    CourseSoFar course = told.course();
    Comparison comparison = course == null ? null : LikeTakes.withLast(course, now);
    if (course == null) {
      box.getChildren().add(Prose.of(words.say(PastWords.notTold(told.state()))));
    } else if (comparison == null) {
      box.getChildren().add(Prose.of(words.say("leader.compare.none")));
    } else {
      show(comparison);
    }
  }

  private void show(Comparison comparison) {
    PlayerSheet.Content sheet = likes.sheet(comparison);
    for (PlayerSheet.Section section : sheet.sections()) {
      box.getChildren().add(sections.node(section, palette));
    }
    Runnable keep = () -> keeping.keep(sheet.title(), "pdf", () -> likes.pdf(comparison));
    box.getChildren()
        .addAll(keeping.button("keep-compared", "leader.compare.keep", keep), keeping.says());
  }
}

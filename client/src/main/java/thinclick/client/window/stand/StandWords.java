package thinclick.client.window.stand;

import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Situation;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.server.engraving.ReaderWords;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.PlaceWords;
import thinclick.server.words.Speaker;

/** What the stand says beside its music. */
final class StandWords {
  private final Words words;

  StandWords(Words words) {
    this.words = words;
  }

  /**
   * Where the take or its reader is.
   *
   * @param large the count or the bar; empty where nobody counts
   * @param below what comes next, or which bars are in view
   * @param briefly which bars are in view, where there is no room for a line below
   */
  record Where(String large, String below, String briefly) {}

  /** A drill with its meter and tempo; empty where nothing is dealt. */
  String title(@Nullable Dealt dealt) {
    return dealt == null
        ? ""
        : words.say(
            "stand.title", dealt.title(), dealt.meter().toString(), Math.round(dealt.tempo()));
  }

  /**
   * Where a part begins, and that it swings: what a reader has to know of it where there is no room
   * for more. Meter and places stand in the music, the tempo is counted in.
   */
  String entry(@Nullable Dealt dealt, @Nullable Part own, @Nullable WrittenPart written) {
    if (dealt == null || own == null || own.attackSteps().isEmpty()) {
      return "";
    }
    int step = own.attackSteps().get(0);
    String enters =
        Speaker.of(words.language())
            .say(PlaceWords.comeIn(step, dealt.meter(), dealt.stepsPerBeat()));
    return Words.sentence(
        written != null && dealt.swing().swings() ? ReaderWords.withFeel(enters, written) : enters);
  }

  /** The same of a reader's part. */
  String entry(StandModel reader) {
    RoomState room = reader.roomProperty().get();
    return entry(room.dealt(), room.ownPart(), reader.written(words.language()));
  }

  /** The bar in which a part begins, from 0. */
  static int entryBar(@Nullable Dealt dealt, @Nullable Part own) {
    return dealt == null || own == null || own.attackSteps().isEmpty()
        ? 0
        : own.attackSteps().get(0) / dealt.meter().stepsPerBar(dealt.stepsPerBeat());
  }

  /**
   * Where the take is; where none runs, which bars are in view.
   *
   * @param several whether others' names stand beside it, so that there is less room
   */
  Where where(TakeMoment moment, Leaf leaf, boolean several) {
    return switch (moment.part()) {
      case NONE, OVER -> inView(leaf, several);
      case BEFORE -> new Where("", Situation.before(moment, words), "");
      case COUNT_IN -> new Where(Integer.toString(moment.count()), words.say("stand.countIn"), "");
      case PLAYING ->
          new Where(words.say("stand.bar", moment.bar() + 1), Situation.click(moment, words), "");
    };
  }

  /** By its first and last bar: pages may have a bar in common. */
  private Where inView(Leaf leaf, boolean several) {
    if (leaf.pages() < 2) {
      return new Where("", "", "");
    }
    int from = leaf.firstBar() + 1;
    int bars = Math.min(3, leaf.endBar() - leaf.firstBar());
    String key = leaf.last() ? "stand.page.last" : "stand.page";
    String brief = several ? "stand.page.briefest" : "stand.page.brief";
    return new Where(
        "",
        words.say(key, from, leaf.endBar(), bars, leaf.bars()),
        words.say(brief, from, leaf.endBar(), Math.min(2, bars), leaf.bars()));
  }
}

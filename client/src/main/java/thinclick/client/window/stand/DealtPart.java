package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.SystemPlan;
import thinclick.server.material.PartWriter;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Transposition;

/** From a dealt part to the page: written as it is printed, every bar of the take in its place. */
final class DealtPart {
  private static final int LEVEL_UNKNOWN = 1;

  private DealtPart() {}

  /** The part as its instrument reads it; the rhythm alone where the host sends no more. */
  static WrittenPart written(Dealt dealt, @Nullable Part own) {
    Drill drill = dealt.drill();
    if (drill == null || own == null) {
      return rhythm(dealt, own);
    }
    try {
      return PartWriter.write(
          drill.withStages(dealt.stages()), drill.chairs().get(0), dealt.tempo(), "");
    } catch (BadInput tooLong) {
      return rhythm(dealt, own);
    }
  }

  /** The whole take in lines of so many bars at most, each stage beginning one. */
  static Reading reading(WrittenPart part, int barsPerSystem) {
    return Reading.writtenOut(part, barsPerSystem, Cut.HALF_BARS);
  }

  /**
   * The whole take in lines for a page on which one stands: each ends with the bar that is played
   * first on the next, so that what comes next is in view, and where it has three bars or more it
   * begins with the bar before the one that is played first on it, so that the marks of what is
   * over are in view as well. A stage begins in a line of its own, as the first bar that is played
   * there; the lines after it remind of its click. Lines have as many bars wherever the take has
   * them, since a short one would leave that page empty.
   *
   * @param barsPerSystem how many bars a line has beside the one it shows ahead
   */
  static Reading lookingAhead(WrittenPart part, int barsPerSystem) {
    StaffPart take = reading(part, 1).part();
    List<SystemPlan> plans = new ArrayList<>();
    int shownAgain = Math.min(barsPerSystem - 1, 1);
    int stageFrom = 0;
    for (Stage stage : part.stages()) {
      int stageEnd = Math.min(stageFrom + stage.bars(), take.bars());
      int latest = (stageEnd == take.bars() ? stageEnd - 1 : stageEnd) - barsPerSystem;
      String direction = take.words(stage);
      int played = stageFrom;
      while (played < stageEnd) {
        int bar = Math.max(0, Math.min(played - shownAgain, latest));
        int to = Math.min(stageEnd, bar + barsPerSystem);
        boolean last = to >= take.bars() - 1 && stageEnd == take.bars();
        int end = last ? take.bars() : to + 1;
        int above = Math.max(0, stageFrom - bar);
        plans.add(new SystemPlan(bar, end - bar, false, 1, direction, above, last));
        direction = take.heldWords(stage);
        played = last ? end : to;
      }
      stageFrom = stageEnd;
    }
    return new Reading(take, plans);
  }

  /** What reminds of the click in each bar of a part's take. */
  static List<String> heldWords(WrittenPart part) {
    StaffPart take = reading(part, 1).part();
    return part.stages().stream()
        .flatMap(stage -> Collections.nCopies(stage.bars(), take.heldWords(stage)).stream())
        .limit(take.bars())
        .toList();
  }

  /** Whether two parts can stand below each other: bar by bar, under the same click. */
  static boolean sameBars(WrittenPart one, WrittenPart other) {
    return one.meter().equals(other.meter())
        && one.stepsPerBeat() == other.stepsPerBeat()
        && one.stages().equals(other.stages());
  }

  private static WrittenPart rhythm(Dealt dealt, @Nullable Part own) {
    return new WrittenPart(
        new WrittenPart.Heading(
            dealt.title(), own == null ? "" : own.player(), null, LEVEL_UNKNOWN, dealt.tempo(), ""),
        Instrument.CLAPPING,
        Transposition.CONCERT,
        dealt.meter(),
        dealt.stepsPerBeat(),
        null,
        dealt.swing(),
        new ClickPlan(dealt.stages()).bars(),
        0,
        null,
        null,
        own == null ? List.of() : notes(dealt, own),
        List.of(),
        List.of(),
        List.of(),
        null,
        dealt.stages(),
        own == null
            ? List.of()
            : IntStream.range(0, new ClickPlan(dealt.stages()).bars())
                .filter(own::freeAt)
                .boxed()
                .toList());
  }

  /**
   * Where no length is dealt a note is written to the next beat or the next attack, whichever comes
   * first: for taps it is the onset that counts, and so every beat stays visible without ties.
   */
  private static List<WrittenPart.Note> notes(Dealt dealt, Part own) {
    Set<Integer> accents = own.accentSteps() == null ? Set.of() : new HashSet<>(own.accentSteps());
    List<Integer> steps = own.attackSteps();
    List<WrittenPart.Note> notes = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      int step = steps.get(i);
      int toBeat = dealt.stepsPerBeat() - step % dealt.stepsPerBeat();
      int length = own.lengthSteps() == null ? toBeat : own.lengthSteps().get(i);
      if (i + 1 < steps.size()) {
        length = Math.min(length, steps.get(i + 1) - step);
      }
      notes.add(
          new WrittenPart.Note(
              step,
              length,
              accents.contains(step),
              false,
              false,
              null,
              null,
              Instrument.CLAPPING.voice()));
    }
    return notes;
  }
}

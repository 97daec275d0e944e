package thinclick.server.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Pitch;

/** A part as counted syllables over beats, for a terminal, in the language of its heading. */
public final class PartText {
  private static final int WIDTH = 5;

  private PartText() {}

  /**
   * The lines of a part: its heading, then for each bar the chords, the counted syllables of the
   * attacks with a point for every other step, the notes, the beats, and a mark where each group
   * begins.
   */
  public static List<String> lines(WrittenPart part) {
    List<String> lines = new ArrayList<>();
    WrittenPart.Heading heading = part.heading();
    SheetWords words = SheetWords.in(heading.language());
    lines.add(
        words.say(
            "text.head",
            heading.title(),
            heading.chair(),
            words.instrument(part.instrument().name()),
            part.meter().toString(),
            heading.level(),
            Quantity.exact(heading.tempo())));
    if (!heading.says().isEmpty()) {
      lines.add(heading.says());
    }
    if (heading.line() != null) {
      lines.add(words.say("text.written", words.line(heading.line())));
    }
    for (int bar = 0; bar < part.bars(); bar++) {
      bar(part, bar, words, lines);
    }
    if (part.repeatFromBar() > 0) {
      lines.add(words.say("text.again", part.repeatFromBar() + 1));
    }
    return lines;
  }

  private static void bar(WrittenPart part, int bar, SheetWords words, List<String> lines) {
    int perBar = part.meter().stepsPerBar(part.stepsPerBeat());
    Map<Integer, WrittenPart.Note> notes = new HashMap<>();
    part.notes().forEach(note -> notes.put(note.step() - bar * perBar, note));
    StringBuilder chords = new StringBuilder(words.say("text.bar", bar + 1));
    for (WrittenPart.ChordSign sign : part.chords()) {
      if (sign.bar() == bar) {
        pad(chords, sign.stepInBar() == 0 ? 8 : sign.stepInBar() * WIDTH + 2);
        chords.append(sign.written());
      }
    }
    Row count = new Row();
    Row pitches = new Row();
    Row beats = new Row();
    Row groups = new Row();
    for (int step = 0; step < perBar; step++) {
      WrittenPart.@Nullable Note note = notes.get(step);
      @Nullable Pitch written = note == null ? null : note.written();
      String accent = note != null && note.accent() ? ">" : "";
      count.add(note == null ? "." : syllable(step, part.meter(), part.stepsPerBeat()) + accent);
      pitches.add(written == null ? "" : written.toString());
      beats.add(step % part.stepsPerBeat() == 0 ? "|" : "");
      groups.add(begins(part, bar * perBar + step) ? "^" : "");
    }
    lines.add(chords.toString());
    lines.add(count.text());
    if (part.writtenKey() != null) {
      lines.add(pitches.text());
    }
    lines.add(beats.text());
    if (!part.groupings().isEmpty()) {
      lines.add(groups.text());
    }
  }

  private static boolean begins(WrittenPart part, int step) {
    return part.groupings().stream().anyMatch(group -> group.fromStep() == step);
  }

  /** How a step is counted; common practice, no source. */
  static String syllable(int stepInBar, Meter meter, int stepsPerBeat) {
    int inBeat = stepInBar % stepsPerBeat;
    if (inBeat == 0) {
      return Integer.toString(stepInBar / stepsPerBeat + 1);
    }
    return switch (stepsPerBeat) {
      case 2 -> "&";
      case 3 -> (meter.compound() ? List.of("&", "a") : List.of("tri", "let")).get(inBeat - 1);
      case 4 -> List.of("e", "&", "a").get(inBeat - 1);
      default -> List.of("ta", "&", "ta", "a", "ta").get(inBeat - 1);
    };
  }

  private static void pad(StringBuilder text, int to) {
    text.append(" ".repeat(Math.max(1, to - text.length())));
  }

  /** One line of columns. */
  private static final class Row {
    private final StringBuilder text = new StringBuilder("  ");

    void add(String cell) {
      text.append(cell).append(" ".repeat(Math.max(1, WIDTH - cell.length())));
    }

    String text() {
      return text.toString().stripTrailing();
    }
  }
}

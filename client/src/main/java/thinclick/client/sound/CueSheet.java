package thinclick.client.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/** What is to sound and when, in room time; in order. */
public final class CueSheet {
  /** Nothing sounds. */
  public static final CueSheet SILENT = new CueSheet(List.of(), 1);

  private final long[] micros;
  private final Sound[] sounds;
  private final double beatMicros;

  private CueSheet(List<Cue> cues, double beatMicros) {
    this.micros = cues.stream().mapToLong(Cue::micros).toArray();
    this.sounds = cues.stream().map(Cue::sound).toArray(Sound[]::new);
    this.beatMicros = beatMicros;
  }

  /** The clicks of a take: the count-in, clicked alone, then the plan. */
  public static CueSheet ofTake(StepGrid grid, int countInBars, ClickPlan plan) {
    return ofTake(grid, countInBars, CountIn.CLICKED, plan);
  }

  /** The clicks of a take and what is spoken with them: the count-in, then the plan. */
  public static CueSheet ofTake(StepGrid grid, int countInBars, CountIn countIn, ClickPlan plan) {
    List<Cue> cues = new ArrayList<>();
    List<Optional<SpokenNumber>> words =
        countIn == CountIn.SPOKEN
            ? SpokenCount.bar(grid.meter().beatsPerBar(), grid.beatMicros())
            : List.of();
    for (Click click : ClickPlan.countIn(grid, countInBars)) {
      if (!words.isEmpty()) {
        int beat = grid.stepInBar(click.step()) / grid.stepsPerBeat();
        // First, since it begins first: the click then stands on the frame of the word's vowel.
        words.get(beat).ifPresent(word -> cues.add(new Cue(click.micros(), word)));
      }
      cues.add(clicked(click));
    }
    plan.clicks(grid).forEach(click -> cues.add(clicked(click)));
    return inOrder(cues, grid.beatMicros());
  }

  /** Clicks in order of time. */
  public static CueSheet of(List<Click> clicks, double beatMicros) {
    return inOrder(clicks.stream().map(CueSheet::clicked).toList(), beatMicros);
  }

  /** One sound. */
  public record Cue(long micros, Sound sound) {}

  /** Sounds in any order, without bar lines to come back at. */
  public static CueSheet ofCues(List<Cue> cues, double beatMicros) {
    return new CueSheet(
        cues.stream().sorted(Comparator.comparingLong(Cue::micros)).toList(), beatMicros);
  }

  private static CueSheet inOrder(List<Cue> cues, double beatMicros) {
    for (int i = 1; i < cues.size(); i++) {
      if (cues.get(i).micros() < cues.get(i - 1).micros()) {
        throw new IllegalArgumentException(
            "cue "
                + i
                + " at "
                + cues.get(i).micros()
                + " lies before the one at "
                + cues.get(i - 1).micros());
      }
    }
    return new CueSheet(cues, beatMicros);
  }

  private static Cue clicked(Click click) {
    return new Cue(click.micros(), click.downbeat() ? Voice.ONE : Voice.BEAT);
  }

  /** All of it, in order. */
  public List<Cue> cues() {
    return IntStream.range(0, micros.length).mapToObj(i -> new Cue(micros[i], sounds[i])).toList();
  }

  int size() {
    return micros.length;
  }

  /** Room time of a cue. */
  long micros(int cue) {
    return micros[cue];
  }

  Sound sound(int cue) {
    return sounds[cue];
  }

  /** True where a cue stands on a bar line. */
  boolean downbeat(int cue) {
    return sounds[cue].ofTheOne();
  }

  /** The length of a beat. */
  double beatMicros() {
    return beatMicros;
  }
}

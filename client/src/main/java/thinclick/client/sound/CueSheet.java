package thinclick.client.sound;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;

/** What is to sound and when, in room time; in order. */
public final class CueSheet {
  /** Nothing sounds. */
  public static final CueSheet SILENT = new CueSheet(new long[0], new Voice[0], 1);

  private final long[] micros;
  private final Voice[] voices;
  private final double beatMicros;

  private CueSheet(long[] micros, Voice[] voices, double beatMicros) {
    this.micros = micros;
    this.voices = voices;
    this.beatMicros = beatMicros;
  }

  /** The clicks of a take: the count-in, then the plan. */
  public static CueSheet ofTake(StepGrid grid, int countInBars, ClickPlan plan) {
    return of(
        Stream.concat(ClickPlan.countIn(grid, countInBars).stream(), plan.clicks(grid).stream())
            .toList(),
        grid.beatMicros());
  }

  /** Clicks in order of time. */
  public static CueSheet of(List<Click> clicks, double beatMicros) {
    long[] micros = new long[clicks.size()];
    Voice[] voices = new Voice[clicks.size()];
    for (int i = 0; i < clicks.size(); i++) {
      micros[i] = clicks.get(i).micros();
      voices[i] = clicks.get(i).downbeat() ? Voice.ONE : Voice.BEAT;
      if (i > 0 && micros[i] < micros[i - 1]) {
        throw new IllegalArgumentException(
            "click " + i + " at " + micros[i] + " lies before the one at " + micros[i - 1]);
      }
    }
    return new CueSheet(micros, voices, beatMicros);
  }

  /** One sound. */
  public record Cue(long micros, Voice voice) {}

  /** Sounds in any order, without bar lines to come back at. */
  public static CueSheet ofCues(List<Cue> cues, double beatMicros) {
    List<Cue> inOrder = cues.stream().sorted(Comparator.comparingLong(Cue::micros)).toList();
    return new CueSheet(
        inOrder.stream().mapToLong(Cue::micros).toArray(),
        inOrder.stream().map(Cue::voice).toArray(Voice[]::new),
        beatMicros);
  }

  /** All of it, in order. */
  public List<Cue> cues() {
    return IntStream.range(0, micros.length).mapToObj(i -> new Cue(micros[i], voices[i])).toList();
  }

  int size() {
    return micros.length;
  }

  /** Room time of a cue. */
  long micros(int cue) {
    return micros[cue];
  }

  Voice voice(int cue) {
    return voices[cue];
  }

  /** True where a cue stands on a bar line. */
  boolean downbeat(int cue) {
    return voices[cue] == Voice.ONE;
  }

  /** The length of a beat. */
  double beatMicros() {
    return beatMicros;
  }
}

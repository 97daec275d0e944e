package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.server.material.pitch.Chord;
import thinclick.server.material.pitch.Progression;

/** A progression laid over bars: where each chord begins. */
final class Harmony {
  private final List<ChordAt> chords;
  private final int stepsPerBar;
  private final int bars;

  /** The bar from which a written part is repeated; what is played past the end is heard there. */
  private final int repeatFromBar;

  private Harmony(List<ChordAt> chords, int stepsPerBar, int bars, int repeatFromBar) {
    this.chords = chords;
    this.stepsPerBar = stepsPerBar;
    this.bars = bars;
    this.repeatFromBar = repeatFromBar;
  }

  /** Lays a progression over as many bars as are asked for, repeating it. */
  static Harmony lay(
      Progression progression,
      Meter meter,
      int stepsPerBeat,
      @Nullable List<Integer> groups,
      int bars,
      int repeatFromBar) {
    List<ChordAt> chords = new ArrayList<>();
    int perBar = meter.stepsPerBar(stepsPerBeat);
    for (int bar = 0; bar < bars; bar++) {
      int inProgression = bar % progression.bars().size();
      List<Chord> ofBar = progression.bars().get(inProgression);
      List<Integer> beats = beats(ofBar.size(), meter, groups, inProgression);
      for (int i = 0; i < ofBar.size(); i++) {
        chords.add(new ChordAt(bar * perBar + (beats.get(i) - 1) * stepsPerBeat, ofBar.get(i)));
      }
    }
    return new Harmony(chords, perBar, bars, repeatFromBar);
  }

  /** The beats on which the chords of one bar begin. */
  private static List<Integer> beats(
      int chords, Meter meter, @Nullable List<Integer> stated, int bar) {
    BeatGroups groups = BeatGroups.of(meter, stated);
    int beats = groups.beats();
    if (chords == 1) {
      return List.of(1);
    }
    if (chords == groups.sizes().size()) {
      return groups.firsts();
    }
    if (chords == 2) {
      // Where a bar has one group it is cut in the middle, where it has three after the second.
      int second = groups.sizes().size() == 1 ? beats / 2 + 1 : groups.firsts().get(2);
      return List.of(1, second);
    }
    if (chords == beats) {
      return IntStream.rangeClosed(1, beats).boxed().toList();
    }
    throw new BadInput(
        "progression, bar " + (bar + 1),
        "expected 1, 2 or " + beats + " chords in " + meter + ", found " + chords);
  }

  /** All chords in order. */
  List<ChordAt> chords() {
    return chords;
  }

  /** The chord that sounds at a step; a step at the end is heard where the part is repeated. */
  Chord at(int step) {
    int heard = step < bars * stepsPerBar ? step : repeatFromBar * stepsPerBar;
    Chord sounding = chords.get(0).chord();
    for (ChordAt chord : chords) {
      if (chord.step() > heard) {
        break;
      }
      sounding = chord.chord();
    }
    return sounding;
  }
}

package thinclick.server.material;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Line;
import thinclick.server.material.pitch.Chord;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.material.pitch.Range;

/**
 * A line of chord notes over a harmony.
 *
 * <p>It begins on the root of the first chord and runs through the chord in thirds, in one
 * direction, turning at the ends of the range. Where the chord changes it goes to the nearest note
 * of the new chord that is not the one it stands on, and from there to the nearest other note of
 * that chord, which gives the direction until the next change. Of two as near, the one in the
 * direction of the line. A chord with a ninth is run through without its root.
 *
 * <p>Passing notes stand on places no heavier than those of the chord notes after them; approach
 * notes stand before an arrival, a half step from it.
 */
final class ChordLine {
  private final Harmony harmony;
  private final Key key;
  private final Range range;
  private final int[] weights;

  ChordLine(Harmony harmony, Key key, Range range, int[] weightsOfBar) {
    this.harmony = harmony;
    this.key = key;
    this.range = range;
    this.weights = weightsOfBar;
  }

  /** One attack of the line while it is being written. */
  private static final class Place {
    final Chord chord;
    final boolean change;
    boolean frame = true;
    @Nullable Pitch pitch;

    Place(Chord chord, boolean change) {
      this.chord = chord;
      this.change = change;
    }
  }

  List<Pitch> write(
      List<Integer> attacks, int totalSteps, Line.Direction direction, Line.Between between) {
    boolean[] arrives = new boolean[attacks.size()];
    int[] steps = Arrivals.harmonySteps(attacks, weights.length, totalSteps, arrives);
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < steps.length; i++) {
      Chord chord = harmony.at(steps[i]);
      places.add(new Place(chord, i > 0 && !chord.equals(places.get(i - 1).chord)));
    }
    chooseFrame(places, attacks, arrives, between);
    writeFrame(places, direction == Line.Direction.DOWN ? -1 : 1);
    fill(places, between);
    return places.stream().map(place -> present(place)).toList();
  }

  private static Pitch present(Place place) {
    if (place.pitch == null) {
      throw new IllegalStateException("an attack was left without a pitch over " + place.chord);
    }
    return place.pitch;
  }

  private void chooseFrame(
      List<Place> places, List<Integer> attacks, boolean[] arrives, Line.Between between) {
    for (int i = 1; i + 1 < places.size(); i++) {
      if (arrives[i] || places.get(i).change) {
        continue;
      }
      boolean leadsHome = arrives[i + 1] || places.get(i + 1).change;
      boolean light = weight(attacks.get(i)) <= weight(attacks.get(i + 1));
      boolean afterChordNote = places.get(i - 1).frame;
      places.get(i).frame =
          switch (between) {
            case CHORD_NOTES -> true;
            case PASSING -> !(light && afterChordNote);
            case APPROACH -> !(leadsHome && afterChordNote);
          };
    }
  }

  private int weight(int step) {
    return weights[step % weights.length];
  }

  private void writeFrame(List<Place> places, int setOut) {
    int direction = setOut;
    boolean justArrived = false;
    @Nullable Pitch last = null;
    @Nullable Chord lastChord = null;
    for (Place place : places) {
      if (!place.frame) {
        continue;
      }
      if (last == null) {
        place.pitch = start(place.chord.root(), setOut);
      } else if (!place.chord.equals(lastChord)) {
        place.pitch = nearestOther(place.chord, last, direction);
        justArrived = true;
      } else if (justArrived) {
        place.pitch = nearestOther(place.chord, last, direction);
        direction = Integer.signum(place.pitch.midi() - last.midi());
        justArrived = false;
      } else {
        place.pitch = next(place.chord, last, direction);
        direction = Integer.signum(place.pitch.midi() - last.midi());
      }
      last = place.pitch;
      lastChord = place.chord;
    }
  }

  /** The root in the lower part of the range, or in the upper one for a line that sets out down. */
  private Pitch start(PitchName root, int setOut) {
    int third = range.width() / 3;
    int around = setOut > 0 ? range.low() + third : range.high() - third;
    return octaves(root)
        .min(Comparator.comparingInt(pitch -> Math.abs(pitch.midi() - around)))
        .orElseThrow();
  }

  private Stream<Pitch> octaves(PitchName name) {
    return Stream.iterate(new Pitch(name, -2), pitch -> new Pitch(name, pitch.octave() + 1))
        .limit(13)
        .filter(pitch -> range.contains(pitch.midi()));
  }

  private Pitch nearestOther(Chord chord, Pitch from, int direction) {
    return frame(chord)
        .filter(pitch -> pitch.midi() != from.midi())
        .min(
            Comparator.comparingInt((Pitch pitch) -> Math.abs(pitch.midi() - from.midi()))
                .thenComparingInt(pitch -> -direction * (pitch.midi() - from.midi())))
        .orElseThrow();
  }

  private Pitch next(Chord chord, Pitch from, int direction) {
    return nextIn(chord, from, direction).or(() -> nextIn(chord, from, -direction)).orElseThrow();
  }

  private Optional<Pitch> nextIn(Chord chord, Pitch from, int direction) {
    return frame(chord)
        .filter(pitch -> direction * (pitch.midi() - from.midi()) > 0)
        .min(Comparator.comparingInt(pitch -> Math.abs(pitch.midi() - from.midi())));
  }

  private Stream<Pitch> frame(Chord chord) {
    return chord.frame().stream().flatMap(this::octaves);
  }

  private void fill(List<Place> places, Line.Between between) {
    for (int i = 1; i + 1 < places.size(); i++) {
      Place place = places.get(i);
      if (!place.frame) {
        Pitch before = present(places.get(i - 1));
        Pitch after = present(places.get(i + 1));
        place.pitch =
            between == Line.Between.APPROACH
                ? approach(before, after)
                : passing(place.chord, before, after);
      }
    }
  }

  /** A half step from the note it leads to, from the side that the line comes from. */
  private Pitch approach(Pitch before, Pitch after) {
    Pitch below = after.up(-1, -1);
    Pitch above = after.up(1, 1);
    boolean fromAbove = before.midi() > after.midi();
    Pitch wanted = fromAbove ? above : below;
    Pitch other = fromAbove ? below : above;
    if (range.contains(wanted.midi()) && wanted.midi() != before.midi()) {
      return wanted.readable();
    }
    return (range.contains(other.midi()) ? other : wanted).readable();
  }

  /** The scale note beside the one it leads to, between the two or just beyond. */
  private Pitch passing(Chord chord, Pitch before, Pitch after) {
    int apart = after.midi() - before.midi();
    int wanted = apart > 2 ? -1 : apart < -2 ? 1 : apart > 0 ? 1 : -1;
    List<Pitch> notes = chord.scaleIn(key).stream().flatMap(this::octaves).toList();
    return beside(notes, after, wanted, before)
        .or(() -> beside(notes, after, -wanted, before))
        .orElse(after);
  }

  private static Optional<Pitch> beside(List<Pitch> notes, Pitch of, int side, Pitch before) {
    return notes.stream()
        .filter(pitch -> side * (pitch.midi() - of.midi()) > 0 && pitch.midi() != before.midi())
        .min(Comparator.comparingInt(pitch -> Math.abs(pitch.midi() - of.midi())));
  }
}

package thinclick.server.material;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.material.pitch.Range;
import thinclick.server.material.pitch.Scale;

/**
 * A scale cell in sequence: the pattern from each degree in turn, within a range. Going down the
 * pattern is mirrored, so that broken thirds stay broken thirds.
 */
final class ScaleLine {
  private static final int OCTAVE = 12;

  private final Scale scale;
  private final List<Integer> pattern;
  private final Line.Direction direction;
  private final Pitch tonic;
  private final Range range;

  ScaleLine(
      Scale scale, PitchName root, List<Integer> pattern, Line.Direction direction, Range range) {
    this.scale = scale;
    this.pattern = pattern;
    this.direction = direction;
    this.range = range;
    this.tonic = lowestIn(root, range);
    check();
  }

  private static Pitch lowestIn(PitchName root, Range range) {
    Pitch pitch = new Pitch(root, -2);
    while (pitch.midi() < range.low()) {
      pitch = new Pitch(root, pitch.octave() + 1);
    }
    return pitch;
  }

  private void check() {
    for (int i = 0; i < pattern.size(); i++) {
      int before = pattern.get(Math.floorMod(i - 1, pattern.size()));
      if (Math.abs(pattern.get(i) - before) > scale.size()) {
        throw new BadInput(
            "pattern[" + i + "]",
            "expected at most an octave, "
                + scale.size()
                + " degrees of "
                + scale.name()
                + ", from "
                + before
                + ", found "
                + pattern.get(i));
      }
    }
    if (degrees(1).isEmpty() || degrees(-1).isEmpty()) {
      throw new BadInput(
          "pattern", "expected a pattern that fits the range of " + range.width() + " semitones");
    }
  }

  /** As many notes as are asked for. */
  List<Pitch> write(int count) {
    List<Pitch> notes = new ArrayList<>();
    int going = direction == Line.Direction.DOWN ? -1 : 1;
    int degree = going > 0 ? lowestTonic() : highestTonic();
    while (notes.size() < count) {
      for (int step : pattern) {
        notes.add(note(degree + going * step));
      }
      int next = degree + going;
      if (fits(next, going)) {
        degree = next;
      } else if (direction == Line.Direction.TURNING) {
        going = -going;
        int lastDegree = degree - going * pattern.get(pattern.size() - 1);
        degree = turned(notes.get(notes.size() - 1), lastDegree, going);
      } else {
        degree = again(notes.get(notes.size() - 1), going);
      }
    }
    return List.copyOf(notes.subList(0, count));
  }

  private Pitch note(int degree) {
    return scale.degree(tonic, degree);
  }

  private boolean fits(int degree, int going) {
    return pattern.stream().allMatch(step -> range.contains(note(degree + going * step).midi()));
  }

  /** The degrees, ascending, from which the whole pattern lies in the range. */
  private List<Integer> degrees(int going) {
    return IntStream.rangeClosed(-scale.size(), 10 * scale.size())
        .filter(degree -> fits(degree, going))
        .boxed()
        .toList();
  }

  /** The lowest tonic from which the pattern fits going up, else the lowest degree. */
  private int lowestTonic() {
    List<Integer> degrees = degrees(1);
    return degrees.stream().filter(this::isTonic).findFirst().orElse(degrees.get(0));
  }

  /** The highest tonic from which the pattern fits going down, else the highest degree. */
  private int highestTonic() {
    List<Integer> degrees = degrees(-1);
    int highest = degrees.get(degrees.size() - 1);
    return degrees.stream().filter(this::isTonic).reduce((one, later) -> later).orElse(highest);
  }

  private boolean isTonic(int degree) {
    return Math.floorMod(degree, scale.size()) == 0;
  }

  /** The degree from which the line goes on after a turn: the nearest on that makes no leap. */
  private int turned(Pitch last, int lastDegree, int going) {
    return IntStream.rangeClosed(1, 2 * scale.size())
        .map(away -> lastDegree + going * (away - pattern.get(0)))
        .filter(degree -> fits(degree, going) && leap(last, degree, going) <= OCTAVE)
        .findFirst()
        .orElseGet(() -> again(last, going));
  }

  /** The farthest degree back from which the line goes the same way again without a leap. */
  private int again(Pitch last, int going) {
    List<Integer> degrees = new ArrayList<>(degrees(going));
    if (going < 0) {
      Collections.reverse(degrees);
    }
    return degrees.stream()
        .filter(degree -> leap(last, degree, going) <= OCTAVE)
        .findFirst()
        .orElseGet(
            () ->
                Collections.min(
                    degrees, Comparator.comparingInt(degree -> leap(last, degree, going))));
  }

  private int leap(Pitch last, int degree, int going) {
    return Math.abs(note(degree + going * pattern.get(0)).midi() - last.midi());
  }
}

package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;

/** Where the marks of a system are gathered while it is laid out. */
final class Sheet {
  private final List<Mark> marks;
  private final Skyline skyline;

  Sheet() {
    this(new ArrayList<>(), new Skyline());
  }

  private Sheet(List<Mark> marks, Skyline skyline) {
    this.marks = marks;
    this.skyline = skyline;
  }

  /** The same marks, to which others may be added here alone. */
  Sheet copy() {
    return new Sheet(new ArrayList<>(marks), skyline.copy());
  }

  /** Adds a mark that others keep clear of. */
  void add(Mark mark) {
    marks.add(mark);
    skyline.add(mark.box());
  }

  /** Adds a mark that others may cross: staff lines, bar lines, rules. */
  void addBehind(Mark mark) {
    marks.add(mark);
  }

  void sign(Place place, Glyph glyph, double x, double y) {
    add(new Mark.Sign(place, Ink.FULL, glyph, x, y, 1));
  }

  void rule(Place place, Ink ink, double x1, double y1, double x2, double y2, double thickness) {
    addBehind(new Mark.Line(place, ink, x1, y1, x2, y2, thickness, false));
  }

  Skyline skyline() {
    return skyline;
  }

  List<Mark> marks() {
    return marks;
  }
}

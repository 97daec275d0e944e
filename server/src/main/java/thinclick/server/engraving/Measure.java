package thinclick.server.engraving;

/**
 * Lengths in staff spaces. The first group is Bravura's own engraving defaults (version 1.392); the
 * second is common practice, no source.
 */
final class Measure {
  static final double STAFF_LINE = 0.13;
  static final double STEM = 0.12;
  static final double BEAM = 0.5;
  static final double BEAM_GAP = 0.25;
  static final double LEDGER_LINE = 0.16;
  static final double LEDGER_REACH = 0.4;
  static final double THIN_BAR = 0.16;
  static final double THICK_BAR = 0.5;
  static final double BAR_GAP = 0.4;
  static final double TIE_MIDDLE = 0.22;
  static final double TIE_END = 0.1;
  static final double TUPLET_LINE = 0.16;

  static final double STEM_LENGTH = 3.5;
  static final double HALF_HEAD = 0.59;
  static final double ACCIDENTAL_GAP = 0.2;

  /** How far a ledger line reaches from its head toward an accidental. */
  static final double LEDGER_REACH_TO_ACCIDENTAL = 0.24;

  /** From a ledger line to the accidental before it. */
  static final double LEDGER_AIR = 0.12;

  static final double DOT_GAP = 0.3;

  /** The size of the click's own part beside the reader's. */
  static final double CLICK_SCALE = 0.7;

  /** The narrowest step. */
  static final double MIN_STEP = 2.6;

  /** The widest step; two bars of a simple meter still fill a line, a shorter one is left short. */
  static final double MAX_STEP = 9.0;

  private Measure() {}
}

package thinclick.server.engraving;

import thinclick.protocol.music.Meter;

/** The signs at the beginning of a staff: clef, key signature, meter, the sign of a repeat. */
final class StaffStart {
  private static final int[] SHARP_PLACES = {4, 1, 5, 2, -1, 3, 0}; // F C G D A E B, treble
  private static final int[] FLAT_PLACES = {0, 3, -1, 2, -2, 1, -3}; // B E A D G C F, treble
  private static final double BEFORE_CLEF = 0.8;
  private static final double AFTER_CLEF = 0.7;
  private static final double AFTER_KEY = 0.8;
  private static final double KEY_AIR = 0.12;
  private static final double AFTER_METER = 0.3;
  private static final double BEFORE_REPEAT = 0.5;

  /** From a single line to the middle of a figure two spaces high: clear above it and below. */
  private static final double OFF_THE_LINE = 1.2;

  private final StaffPart part;

  StaffStart(StaffPart part) {
    this.part = part;
  }

  /** Draws the signs on a staff with its middle line at 0; answers where they end. */
  double draw(Sheet sheet, SystemPlan plan) {
    double x = clef(sheet, BEFORE_CLEF) + AFTER_CLEF;
    x = key(sheet, x);
    if (plan.firstBar() == 0) {
      x = meter(sheet, x) + AFTER_METER;
    }
    return plan.repeatFrom() ? x + BEFORE_REPEAT + BarLines.REPEAT_WIDTH : x;
  }

  private double clef(Sheet sheet, double x) {
    Glyph glyph =
        switch (part.clef()) {
          case TREBLE -> Glyph.G_CLEF;
          case BASS -> Glyph.F_CLEF;
          case PERCUSSION, ONE_LINE -> Glyph.UNPITCHED_PERCUSSION_CLEF_1;
        };
    double y =
        switch (part.clef()) {
          case TREBLE -> 1;
          case BASS -> -1;
          case PERCUSSION, ONE_LINE -> 0;
        };
    sheet.sign(Place.saying(part.said().say(part.clef().key())), glyph, x, y);
    return x + glyph.right();
  }

  private double key(Sheet sheet, double x) {
    int fifths = part.fifths();
    if (fifths == 0 || !part.clef().pitched()) {
      return x;
    }
    int count = Math.abs(fifths);
    Glyph glyph = fifths > 0 ? Glyph.ACCIDENTAL_SHARP : Glyph.ACCIDENTAL_FLAT;
    String words =
        part.said()
            .say(fifths > 0 ? "sheet.sharps" : "sheet.flats", count, Integer.toString(count));
    Place place = Place.saying(words);
    int lower = part.clef() == Clef.BASS ? 2 : 0;
    double at = x;
    for (int i = 0; i < count; i++) {
      int position = (fifths > 0 ? SHARP_PLACES[i] : FLAT_PLACES[i]) - lower;
      sheet.sign(i == 0 ? place : place.silent(), glyph, at, -position / 2.0);
      at += glyph.right() + KEY_AIR;
    }
    return at - KEY_AIR + AFTER_KEY;
  }

  private double meter(Sheet sheet, double x) {
    Meter meter = part.meter();
    double width = Math.max(width(meter.count()), width(meter.unit()));
    Place place = Place.saying(part.said().say("sheet.meter", meter.count(), meter.unit()));
    double apart = part.clef().lines() == 1 ? OFF_THE_LINE : 1;
    number(sheet, place, meter.count(), x + (width - width(meter.count())) / 2, -apart);
    number(sheet, place.silent(), meter.unit(), x + (width - width(meter.unit())) / 2, apart);
    return x + width;
  }

  private static double width(int number) {
    return String.valueOf(number)
        .chars()
        .mapToDouble(digit -> Glyph.timeDigit(digit - '0').advance())
        .sum();
  }

  private static void number(Sheet sheet, Place place, int number, double x, double y) {
    double at = x;
    String digits = String.valueOf(number);
    for (int i = 0; i < digits.length(); i++) {
      Glyph glyph = Glyph.timeDigit(digits.charAt(i) - '0');
      sheet.sign(place, glyph, at, y);
      at += glyph.advance();
    }
  }
}

package thinclick.server.material.pitch;

import static thinclick.server.material.pitch.Clef.BASS;
import static thinclick.server.material.pitch.Clef.PERCUSSION;
import static thinclick.server.material.pitch.Clef.TREBLE;

import java.util.List;
import java.util.Map;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;

/** The table of instruments; ranges and kit places are common practice, no source. */
final class Instruments {
  private static final Transposition CONCERT = Transposition.CONCERT;
  private static final Transposition B_FLAT = new Transposition(-1, -2);
  private static final Transposition B_FLAT_OCTAVE = new Transposition(-8, -14);
  private static final Transposition E_FLAT = new Transposition(-5, -9);
  private static final Transposition E_FLAT_OCTAVE = new Transposition(-12, -21);
  private static final Transposition F = new Transposition(-4, -7);
  private static final Transposition OCTAVE = new Transposition(-7, -12);

  static final List<Instrument> ALL =
      List.of(
          pitched("flute", TREBLE, CONCERT, 73, 60, 96, 62, 81),
          pitched("clarinet", TREBLE, B_FLAT, 71, 50, 91, 50, 69),
          pitched("soprano saxophone", TREBLE, B_FLAT, 64, 56, 87, 60, 79),
          pitched("alto saxophone", TREBLE, E_FLAT, 65, 49, 80, 53, 72),
          pitched("tenor saxophone", TREBLE, B_FLAT_OCTAVE, 66, 44, 75, 48, 67),
          pitched("baritone saxophone", TREBLE, E_FLAT_OCTAVE, 67, 37, 68, 41, 60),
          pitched("trumpet", TREBLE, B_FLAT, 56, 52, 82, 58, 74),
          pitched("flugelhorn", TREBLE, B_FLAT, 56, 52, 79, 58, 74),
          pitched("horn", TREBLE, F, 60, 41, 77, 53, 70),
          pitched("trombone", BASS, CONCERT, 57, 40, 70, 46, 65),
          pitched("tuba", BASS, CONCERT, 58, 28, 58, 34, 53),
          pitched("voice", TREBLE, CONCERT, 52, 55, 79, 57, 74),
          pitched("violin", TREBLE, CONCERT, 40, 55, 93, 55, 79),
          pitched("cello", BASS, CONCERT, 42, 36, 69, 36, 60),
          pitched("guitar", TREBLE, OCTAVE, 26, 40, 72, 43, 67),
          pitched("piano", TREBLE, CONCERT, 0, 53, 82, 60, 79),
          pitched("vibraphone", TREBLE, CONCERT, 11, 53, 82, 60, 79),
          pitched("bass", BASS, OCTAVE, 33, 28, 52, 28, 50),
          pitched("double bass", BASS, OCTAVE, 32, 28, 52, 28, 50),
          struck("ride", "ride", 51, 4, true),
          struck("hi-hat", "closed hi-hat", 42, 5, true),
          struck("snare drum", "snare", 38, 1, false),
          struck("side stick", "side stick", 37, 1, true),
          struck("bass drum", "bass drum", 36, -3, false),
          struck("shaker", "shaker", 70, 0, true),
          struck("tambourine", "tambourine", 54, 0, true),
          struck("claves", "claves", 75, 0, false),
          struck("cowbell", "cowbell", 56, 0, false),
          struck("wood block", "high wood block", 76, 0, false),
          struck("conga", "open high conga", 63, 0, false),
          Instrument.CLAPPING);

  private static final Map<String, String> ALSO =
      Map.ofEntries(
          Map.entry("alto sax", "alto saxophone"),
          Map.entry("tenor sax", "tenor saxophone"),
          Map.entry("soprano sax", "soprano saxophone"),
          Map.entry("baritone sax", "baritone saxophone"),
          Map.entry("bari sax", "baritone saxophone"),
          Map.entry("french horn", "horn"),
          Map.entry("electric bass", "bass"),
          Map.entry("bass guitar", "bass"),
          Map.entry("keys", "piano"),
          Map.entry("vibes", "vibraphone"),
          Map.entry("drums", "ride"),
          Map.entry("drum kit", "ride"),
          Map.entry("ride cymbal", "ride"),
          Map.entry("snare", "snare drum"),
          Map.entry("clave", "claves"),
          Map.entry("congas", "conga"),
          Map.entry("hands", "clapping"));

  private Instruments() {}

  static Instrument find(String where, String name) {
    String folded = Nearest.folded(name);
    String wanted = ALSO.getOrDefault(folded, folded);
    for (Instrument instrument : ALL) {
      if (Nearest.folded(instrument.name()).equals(wanted)) {
        return instrument;
      }
    }
    throw new BadInput(
        where,
        "expected an instrument, found \""
            + name
            + "\"; "
            + Nearest.didYouMean(name, ALL.stream().map(Instrument::name).toList()));
  }

  private static Instrument pitched(
      String name,
      Clef clef,
      Transposition transposition,
      int program,
      int low,
      int high,
      int beginnersLow,
      int beginnersHigh) {
    return new Instrument(
        name,
        clef,
        transposition,
        program,
        new Range(low, high),
        new Range(beginnersLow, beginnersHigh),
        null);
  }

  private static Instrument struck(
      String name, String voice, int key, int staffStep, boolean cross) {
    return new Instrument(
        name, PERCUSSION, CONCERT, 0, null, null, new DrumVoice(voice, key, staffStep, cross));
  }
}

package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.material.Group;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.DrumVoice;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.material.pitch.Transposition;

/** Written parts for tests of pages and exports, put together by hand. */
public final class Samples {
  /** The ladder of a lesson: all beats, two and four, the first alone, none. */
  public static final List<Stage> LADDER =
      List.of(
          Stage.ofBeats(8, 1, 1, 2, 3, 4),
          Stage.ofBeats(8, 1, 2, 4),
          Stage.ofBeats(8, 1, 1),
          Stage.ofBeats(8, 1));

  private Samples() {}

  public static Instrument instrument(String name) {
    return Instrument.all().stream().filter(i -> i.name().equals(name)).findFirst().orElseThrow();
  }

  /** Off the beat, one bar, clapped. */
  public static WrittenPart andsAlone() {
    return rhythm("Ands alone", "clapping", Meter.FOUR_FOUR, 2, 1, "1 3 5 7", 3, LADDER);
  }

  /** Rhythm alone: {@code "1 3 5"} are steps, each written to the next attack or the beat's end. */
  public static WrittenPart rhythm(
      String title,
      String instrument,
      Meter meter,
      int stepsPerBeat,
      int bars,
      String steps,
      int level,
      List<Stage> stages) {
    Instrument reads = instrument(instrument);
    List<WrittenPart.Note> notes = new ArrayList<>();
    List<Integer> at = steps(steps);
    for (int i = 0; i < at.size(); i++) {
      int next = i + 1 < at.size() ? at.get(i + 1) : bars * meter.stepsPerBar(stepsPerBeat);
      int beatEnd = (at.get(i) / stepsPerBeat + 1) * stepsPerBeat;
      int length = Math.min(next, beatEnd) - at.get(i);
      notes.add(
          new WrittenPart.Note(at.get(i), length, i == 0, false, false, null, null, reads.voice()));
    }
    return new WrittenPart(
        new WrittenPart.Heading(title, "Mina", "timeline", level, 96, ""),
        reads,
        Transposition.CONCERT,
        meter,
        stepsPerBeat,
        null,
        Swing.STRAIGHT,
        bars,
        0,
        null,
        null,
        notes,
        List.of(),
        List.of(),
        List.of(),
        null,
        stages,
        List.of());
  }

  /** Threes over a ii-V-I, four bars, the cycle beginning anew in bar 4. */
  public static WrittenPart longThrees(String instrument, String concertKey) {
    Instrument reads = instrument(instrument);
    Key key = Key.parse("key", concertKey);
    Transposition reading = readable(reads.transposition(), key);
    int[] steps = {0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 29, 31};
    // degrees of the major scale over ii | V | I | I, with a lowered ninth on V and an approach
    int[] letters = {1, 3, 5, 7, 5, 4, 2, 3, 4, 6, 4, 1};
    int[] semitones = {2, 5, 9, 12, 8, 7, 4, 5, 7, 11, 7, 1};
    List<WrittenPart.Note> notes = new ArrayList<>();
    Pitch tonic = key.tonic().nearest(48);
    for (int i = 0; i < steps.length; i++) {
      int end = i + 1 < steps.length ? steps[i + 1] : 32;
      Pitch concert = tonic.up(letters[i], semitones[i]);
      Pitch written = reading.written(concert);
      notes.add(
          new WrittenPart.Note(
              steps[i], end - steps[i], i % 4 == 0, false, false, written, concert, null));
    }
    List<WrittenPart.ChordSign> chords =
        List.of(
            chord(0, 0, key, reading, 1, 2, "m7"),
            chord(1, 0, key, reading, 4, 7, "7b9"),
            chord(2, 0, key, reading, 0, 0, "maj7"),
            chord(3, 0, key, reading, 0, 0, "6"),
            chord(3, 4, key, reading, 5, 9, "7#5"));
    List<Group> groups = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      int from = i * 3;
      groups.add(new Group(from, from + 3, false, List.of(), List.of(), from % 8 == 0));
    }
    groups.add(new Group(24, 27, false, List.of(), List.of(), true));
    groups.add(new Group(27, 32, true, List.of(), List.of(), false));
    Key writtenKey = new Key(reading.written(key.tonic()), key.minor());
    return new WrittenPart(
        new WrittenPart.Heading(
            "Long threes",
            "Jonas",
            "horn answers",
            6,
            132,
            "Comes in on the one; four bars, then again."),
        reads,
        reading,
        Meter.FOUR_FOUR,
        2,
        null,
        Swing.of(2),
        4,
        0,
        writtenKey,
        key,
        notes,
        chords,
        List.of(),
        groups,
        3,
        LADDER,
        List.of());
  }

  private static WrittenPart.ChordSign chord(
      int bar,
      int step,
      Key key,
      Transposition reading,
      int letters,
      int semitones,
      String quality) {
    PitchName concert = key.tonic().up(letters, semitones);
    PitchName written = reading.written(concert);
    return new WrittenPart.ChordSign(bar, step, written + quality, concert + quality);
  }

  /** One voice of a kit. */
  public static WrittenPart kit(String instrument, Meter meter, int stepsPerBeat, String steps) {
    return rhythm(
        "Hocket in sixteenths",
        instrument,
        meter,
        stepsPerBeat,
        1,
        steps,
        7,
        List.of(Stage.ofBeats(4, 1, 1, 2), Stage.ofBeats(4, 2, 1)));
  }

  /** Slashes on five lines under chord symbols. */
  public static WrittenPart comping() {
    WrittenPart rhythm =
        rhythm("Sparse comp", "guitar", Meter.FOUR_FOUR, 2, 2, "3 7 10 15", 5, LADDER);
    return new WrittenPart(
        rhythm.heading(),
        rhythm.instrument(),
        rhythm.instrument().transposition(),
        rhythm.meter(),
        2,
        null,
        Swing.STRAIGHT,
        2,
        0,
        Key.parse("key", "Eb"),
        Key.parse("key", "Eb"),
        rhythm.notes(),
        List.of(
            new WrittenPart.ChordSign(0, 0, "Ebmaj7", "Ebmaj7"),
            new WrittenPart.ChordSign(1, 0, "Ab7#11", "Ab7#11")),
        List.of(),
        List.of(),
        null,
        LADDER,
        List.of());
  }

  /** Bars 5 to 8 and 13 to 16 of sixteen are free; else the beats, or the dotted beats of 6/8. */
  public static WrittenPart tradingFours(boolean compound) {
    Drill drill = Stock.find(compound ? "Six-eight twos" : "Even eighths");
    Drill.Chair chair = drill.chairs().get(0);
    Drill.Chair free =
        new Drill.Chair(
            "Ilse",
            null,
            chair.cell(),
            0,
            null,
            null,
            "snare drum",
            List.of(new FreeBars(4, 8, 8)));
    return PartWriter.write(
        drill.withStages(List.of(Stage.ofBeats(16, 1, 1))), free, drill.tempo().start(), "");
  }

  /**
   * A staff of 4/4 in eighths: {@code "8 Eb4"} is an eighth E flat 4 on step 8, {@code "8 Eb4 3"}
   * one of three steps.
   */
  static StaffPart staff(int fifths, String... notes) {
    List<StaffNote> list = new ArrayList<>();
    for (String note : notes) {
      String[] words = note.split(" ");
      int octave = words[1].charAt(words[1].length() - 1) - '0';
      PitchName name = PitchName.parse("note", words[1].substring(0, words[1].length() - 1));
      list.add(
          StaffNote.pitched(
              Integer.parseInt(words[0]),
              words.length > 2 ? Integer.parseInt(words[2]) : 1,
              Clef.TREBLE,
              new Pitch(name, octave),
              java.util.Set.of()));
    }
    return new StaffPart(
        Meter.FOUR_FOUR,
        2,
        null,
        2,
        Clef.TREBLE,
        fifths,
        list,
        List.of(),
        List.of(),
        List.of(),
        Cut.BEATS,
        List.of(),
        Locale.ENGLISH);
  }

  public static List<Integer> steps(String steps) {
    List<Integer> list = new ArrayList<>();
    for (String step : steps.strip().split("[ ,]+")) {
      list.add(Integer.parseInt(step));
    }
    return list;
  }

  /** Any part at all, for checks that must always hold. */
  public static WrittenPart random(Random random) {
    List<String> meters = List.of("2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8");
    Meter meter = Meter.parse(meters.get(random.nextInt(meters.size())));
    List<Integer> divisions = meter.compound() ? List.of(3, 6) : List.of(2, 3, 4, 6);
    int stepsPerBeat = divisions.get(random.nextInt(divisions.size()));
    int stepsPerBar = meter.stepsPerBar(stepsPerBeat);
    int bars = 1 + random.nextInt(4);
    List<Instrument> all = Instrument.all();
    Instrument reads = all.get(random.nextInt(all.size()));
    boolean pitched = reads.pitched() && random.nextInt(4) > 0;
    Key key =
        new Key(
            List.of("C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B").stream()
                .map(n -> PitchName.parse("key", n))
                .toList()
                .get(random.nextInt(12)),
            false);
    Transposition reading = readable(reads.transposition(), key);
    List<WrittenPart.Note> notes = new ArrayList<>();
    for (int at = random.nextInt(4); at < bars * stepsPerBar; ) {
      int length = 1 + random.nextInt(random.nextInt(6) == 0 ? 10 : 4);
      Pitch concert = null;
      Pitch written = null;
      if (pitched) {
        int low = reads.range().low();
        int high = reads.range().high();
        int octaves = Math.max(1, (high - low) / 12);
        Pitch tonic = key.tonic().nearest(low + 6 + 12 * random.nextInt(octaves));
        int[] major = {0, 2, 4, 5, 7, 9, 11};
        int letter = random.nextInt(7);
        int bend = random.nextInt(5) == 0 ? random.nextInt(2) - 1 : 0;
        concert = tonic.up(letter, major[letter] + bend);
        written = reading.written(concert);
      }
      DrumVoice voice = pitched ? null : reads.voice();
      notes.add(
          new WrittenPart.Note(
              at,
              length,
              random.nextInt(4) == 0,
              random.nextInt(6) == 0,
              random.nextInt(6) == 0,
              written,
              concert,
              voice));
      at += length + (random.nextBoolean() ? 0 : random.nextInt(5));
    }
    List<WrittenPart.ChordSign> chords = new ArrayList<>();
    if (pitched && random.nextBoolean()) {
      List<String> qualities = List.of("", "m7", "7", "maj7", "m7b5", "7b9", "dim7", "6", "7#5");
      for (int bar = 0; bar < bars; bar++) {
        String root = key.tonic().toString();
        String quality = qualities.get(random.nextInt(qualities.size()));
        chords.add(new WrittenPart.ChordSign(bar, 0, root + quality, root + quality));
      }
    }
    List<Group> groups = new ArrayList<>();
    int grouping = random.nextBoolean() ? 0 : 3 + random.nextInt(5);
    for (int at = 0; grouping > 0 && at + grouping <= bars * stepsPerBar; at += grouping) {
      groups.add(new Group(at, at + grouping, false, List.of(), List.of(), at % stepsPerBar == 0));
    }
    List<Stage> stages = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(3); i++) {
      List<Integer> clicks = new ArrayList<>();
      for (int step = 0; step < stepsPerBar; step++) {
        if (random.nextInt(stepsPerBeat + 1) == 0) {
          clicks.add(step);
        }
      }
      stages.add(new Stage(1 + random.nextInt(8), 1, null, clicks));
    }
    return new WrittenPart(
        new WrittenPart.Heading("Any", "Ilse", "comping", 5, 100, "Comes in somewhere."),
        reads,
        pitched ? reading : Transposition.CONCERT,
        meter,
        stepsPerBeat,
        null,
        Swing.STRAIGHT,
        bars,
        0,
        pitched ? new Key(reading.written(key.tonic()), false) : null,
        pitched ? key : null,
        notes,
        chords,
        List.of(),
        groups,
        null,
        stages,
        List.of());
  }

  /** The transposition with the written key of at most six accidentals. */
  private static Transposition readable(Transposition transposition, Key key) {
    for (Transposition tried :
        List.of(transposition, transposition.respelled(1), transposition.respelled(-1))) {
      PitchName tonic = tried.written(key.tonic());
      if (List.of("C", "Db", "D", "Eb", "E", "F", "F#", "Gb", "G", "Ab", "A", "Bb", "B")
          .contains(tonic.toString())) {
        return tried;
      }
    }
    throw new AssertionError("no readable key for " + key);
  }
}

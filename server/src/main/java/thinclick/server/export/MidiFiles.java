package thinclick.server.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.StepGrid;

/**
 * Writes Standard MIDI Files, format 1: tempo and meter, then the click on a track of its own, then
 * a track for each part. Where a part leaves its player free, a marker on the first track says so.
 *
 * <p>A quarter has {@value #TICKS_PER_QUARTER} ticks, so every straight step and every pair swung
 * 2:1 or 3:1 begins exactly on a tick; other swing ratios are at most half a tick off, a quarter of
 * a millisecond at 120 beats a minute. Swing is written as it sounds.
 */
public final class MidiFiles {
  /** Resolution; every grid's step is a whole number of ticks. */
  public static final int TICKS_PER_QUARTER = 960;

  /** General MIDI percussion key of a click on the one, Hi Wood Block. */
  public static final int CLICK_ON_ONE = 76;

  /** General MIDI percussion key of every other click, Low Wood Block. */
  public static final int CLICK = 77;

  private static final int PERCUSSION_CHANNEL = 9; // channel 10, counted from 0
  private static final int MELODIC_CHANNELS = 15;
  private static final int CLICK_VELOCITY = 100;
  private static final int TRACK_NAME = 0x03;
  private static final int MARKER = 0x06;
  private static final int END_OF_TRACK = 0x2F;
  private static final int TEMPO = 0x51;
  private static final int TIME_SIGNATURE = 0x58;
  private static final int MIDI_CLOCKS_PER_QUARTER = 24;

  private MidiFiles() {}

  /** Writes the score to {@code out}, which stays open. */
  public static void write(MidiScore score, OutputStream out) throws IOException {
    MidiSystem.write(sequence(score), 1, out);
  }

  /** The score as a sequence that can be written or played. */
  public static Sequence sequence(MidiScore score) {
    try {
      Sequence sequence = new Sequence(Sequence.PPQ, TICKS_PER_QUARTER);
      Ticks ticks = new Ticks(score.grid(), score.countInBars());
      long end = ticks.of((long) score.bars() * score.grid().stepsPerBar());
      conductor(score, ticks, sequence.createTrack(), end);
      click(score, ticks, sequence.createTrack(), end);
      List<Integer> channels = channels(score.parts());
      for (int i = 0; i < score.parts().size(); i++) {
        part(score.parts().get(i), channels.get(i), ticks, sequence.createTrack(), end);
      }
      return sequence;
    } catch (InvalidMidiDataException impossible) {
      throw new IllegalStateException("a MIDI message out of range", impossible);
    }
  }

  /** From steps to ticks, the count-in before step 0. */
  private record Ticks(StepGrid grid, int countInBars) {
    long of(long step) {
      Meter meter = grid.meter();
      long perBeat = meter.compound() ? TICKS_PER_QUARTER * 3 / 2 : TICKS_PER_QUARTER;
      long before = (long) countInBars * meter.beatsPerBar() * perBeat;
      return before + Math.round(grid.swungStep(step) * perBeat / grid.stepsPerBeat());
    }
  }

  private static void conductor(MidiScore score, Ticks ticks, Track track, long end)
      throws InvalidMidiDataException {
    StepGrid grid = score.grid();
    Meter meter = grid.meter();
    name(track, score.title());
    int unitPower = meter.unit() == 8 ? 3 : 2;
    int clocksPerBeat =
        meter.compound() ? MIDI_CLOCKS_PER_QUARTER * 3 / 2 : MIDI_CLOCKS_PER_QUARTER;
    meta(
        track,
        0,
        TIME_SIGNATURE,
        (byte) meter.count(),
        (byte) unitPower,
        (byte) clocksPerBeat,
        (byte) 8);
    double quartersPerBeat = meter.compound() ? 1.5 : 1;
    int micros = (int) Math.round(grid.beatMicros() / quartersPerBeat);
    meta(track, 0, TEMPO, (byte) (micros >> 16), (byte) (micros >> 8), (byte) micros);
    for (MidiPart part : score.parts()) {
      for (MidiPart.Marker marker : part.markers()) {
        byte[] text = marker.text().getBytes(StandardCharsets.UTF_8);
        meta(track, ticks.of(marker.step()), MARKER, text);
      }
    }
    end(track, end);
  }

  private static void click(MidiScore score, Ticks ticks, Track track, long end)
      throws InvalidMidiDataException {
    name(track, "click");
    List<Click> clicks = new ArrayList<>();
    if (score.countInBars() > 0) {
      clicks.addAll(ClickPlan.countIn(score.grid(), score.countInBars()));
    }
    clicks.addAll(score.clicks());
    long length = TICKS_PER_QUARTER / 8;
    for (Click click : clicks) {
      int key = click.downbeat() ? CLICK_ON_ONE : CLICK;
      long at = ticks.of(click.step());
      note(track, PERCUSSION_CHANNEL, at, at + length, key, CLICK_VELOCITY);
    }
    end(track, end);
  }

  private static void part(MidiPart part, int channel, Ticks ticks, Track track, long end)
      throws InvalidMidiDataException {
    name(track, part.name());
    if (!part.percussion()) {
      track.add(
          new MidiEvent(
              new ShortMessage(ShortMessage.PROGRAM_CHANGE, channel, part.program(), 0), 0));
    }
    List<MidiNote> notes =
        part.notes().stream()
            .filter(note -> ticks.of(note.step()) < end)
            .sorted(Comparator.comparingInt(MidiNote::step))
            .toList();
    for (MidiNote note : notes) {
      long from = ticks.of(note.step());
      long to = Math.min(end, ticks.of((long) note.step() + note.length()));
      long sounding = note.staccato() ? (to - from) / 2 : to - from;
      note(track, channel, from, from + sounding, note.key(), note.velocity());
    }
    end(track, end);
  }

  /**
   * A channel for each part: percussion on 10, others their own while there are enough, then the
   * one of a part with the same program, at last in turn.
   */
  private static List<Integer> channels(List<MidiPart> parts) {
    List<Integer> channels = new ArrayList<>();
    Map<Integer, Integer> channelOfProgram = new HashMap<>();
    int melodic = 0;
    for (MidiPart part : parts) {
      if (part.percussion()) {
        channels.add(PERCUSSION_CHANNEL);
        continue;
      }
      int inTurn = melodic % MELODIC_CHANNELS;
      int own = inTurn < PERCUSSION_CHANNEL ? inTurn : inTurn + 1;
      int channel =
          melodic < MELODIC_CHANNELS ? own : channelOfProgram.getOrDefault(part.program(), own);
      channelOfProgram.putIfAbsent(part.program(), channel);
      channels.add(channel);
      melodic++;
    }
    return channels;
  }

  /** Adds a note; its end is put before what begins on the same tick. */
  private static void note(Track track, int channel, long from, long to, int key, int velocity)
      throws InvalidMidiDataException {
    add(track, new ShortMessage(ShortMessage.NOTE_ON, channel, key, velocity), from);
    add(track, new ShortMessage(ShortMessage.NOTE_OFF, channel, key, 0), to);
  }

  private static void add(Track track, MidiMessage message, long tick) {
    track.add(new MidiEvent(message, tick));
  }

  private static void name(Track track, String name) throws InvalidMidiDataException {
    meta(track, 0, TRACK_NAME, name.getBytes(StandardCharsets.UTF_8));
  }

  private static void end(Track track, long tick) throws InvalidMidiDataException {
    meta(track, tick, END_OF_TRACK);
  }

  private static void meta(Track track, long tick, int type, byte... data)
      throws InvalidMidiDataException {
    track.add(new MidiEvent(new MetaMessage(type, data, data.length), tick));
  }
}

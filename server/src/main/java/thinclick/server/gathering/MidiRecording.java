package thinclick.server.gathering;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import thinclick.protocol.json.BadInput;

/**
 * The notes of a Standard MIDI File of format 0 or 1, in the order they began. Tempo changes of any
 * track hold for all tracks; a note-on of velocity 0 ends a note.
 *
 * @param notes by their beginning
 */
public record MidiRecording(List<RecordedNote> notes) {
  /** The longest recording that is taken, micros. */
  static final long LONGEST_MICROS = 24L * 3_600 * 1_000_000;

  private static final int TEMPO = 0x51;

  public MidiRecording {
    notes = List.copyOf(notes);
  }

  /** A key held down on one channel. */
  private record Key(int channel, int pitch) {}

  /**
   * Reads a file.
   *
   * @throws BadInput naming the byte, and the track where one is wrong
   */
  public static MidiRecording read(byte[] file) {
    MidiChunks chunks = MidiChunks.of(file);
    List<Track> tracks = new ArrayList<>();
    for (int i = 0; i < chunks.tracks().size(); i++) {
      tracks.add(readTrack(file, chunks, i));
    }
    TempoMap tempo = new TempoMap(chunks.division(), tempoChanges(tracks));
    List<RecordedNote> notes = new ArrayList<>();
    for (int i = 0; i < tracks.size(); i++) {
      try {
        collectNotes(tracks.get(i), tempo, notes);
      } catch (BadInput bad) {
        throw new BadInput("track " + (i + 1), bad.says());
      }
    }
    notes.sort(Comparator.comparingLong(RecordedNote::micros));
    return new MidiRecording(notes);
  }

  /** The notes of one channel, counted from 1. */
  public List<RecordedNote> onChannel(int channel) {
    return notes.stream().filter(note -> note.channel() == channel).toList();
  }

  /** Each track is handed to the reader as a file of its own, so that a wrong one has a name. */
  private static Track readTrack(byte[] file, MidiChunks chunks, int index) {
    MidiChunks.Chunk chunk = chunks.tracks().get(index);
    ByteBuffer alone = ByteBuffer.allocate(14 + chunk.to() - chunk.from());
    alone.put(new byte[] {'M', 'T', 'h', 'd', 0, 0, 0, 6, 0, 0, 0, 1});
    alone.putShort(chunks.division()).put(file, chunk.from(), chunk.to() - chunk.from());
    Counting in = new Counting(new ByteArrayInputStream(alone.array()));
    try {
      return MidiSystem.getSequence(in).getTracks()[0];
    } catch (InvalidMidiDataException | IOException | RuntimeException problem) {
      // The reader's own sentence names neither byte nor event; it stops where it gave up.
      int at = chunk.from() + Math.min(in.furthest, alone.capacity()) - 14;
      throw new BadInput(
          "track " + (index + 1) + ", byte " + Math.max(at, chunk.from()),
          "expected a MIDI event, found something else");
    }
  }

  private static Map<Long, Long> tempoChanges(List<Track> tracks) {
    Map<Long, Long> changes = new TreeMap<>();
    for (Track track : tracks) {
      for (int i = 0; i < track.size(); i++) {
        MidiEvent event = track.get(i);
        if (event.getMessage() instanceof MetaMessage meta
            && meta.getType() == TEMPO
            && meta.getData().length == 3) {
          byte[] data = meta.getData();
          long microsAQuarter =
              (data[0] & 0xffL) << 16 | (data[1] & 0xffL) << 8 | (data[2] & 0xffL);
          changes.put(event.getTick(), microsAQuarter);
        }
      }
    }
    return changes;
  }

  private static void collectNotes(Track track, TempoMap tempo, List<RecordedNote> notes) {
    Map<Key, Deque<Integer>> held = new HashMap<>();
    for (int i = 0; i < track.size(); i++) {
      MidiEvent event = track.get(i);
      MidiMessage message = event.getMessage();
      if (!(message instanceof ShortMessage voice)) {
        continue;
      }
      boolean on = voice.getCommand() == ShortMessage.NOTE_ON && voice.getData2() > 0;
      boolean off =
          voice.getCommand() == ShortMessage.NOTE_OFF
              || (voice.getCommand() == ShortMessage.NOTE_ON && !on);
      if (!on && !off) {
        continue;
      }
      checkData("note", voice.getData1());
      checkData("velocity", voice.getData2());
      Key key = new Key(voice.getChannel() + 1, voice.getData1());
      long micros = microsOf(tempo, event.getTick());
      if (on) {
        held.computeIfAbsent(key, k -> new ArrayDeque<>()).add(notes.size());
        notes.add(new RecordedNote(micros, null, key.channel, key.pitch, voice.getData2()));
      } else {
        // A key struck again before it was let go: the first on belongs to the first off.
        Deque<Integer> waiting = held.get(key);
        Integer begun = waiting == null ? null : waiting.poll();
        if (begun != null) {
          RecordedNote note = notes.get(begun);
          notes.set(
              begun,
              new RecordedNote(
                  note.micros(), micros - note.micros(), key.channel, key.pitch, note.velocity()));
        }
      }
    }
  }

  private static void checkData(String what, int value) {
    if (value > 127) {
      throw new BadInput("", "expected a " + what + " from 0 to 127, found " + value);
    }
  }

  private static long microsOf(TempoMap tempo, long tick) {
    long micros;
    try {
      micros = tempo.microsAt(tick);
    } catch (ArithmeticException overflow) {
      micros = Long.MAX_VALUE;
    }
    if (micros > LONGEST_MICROS) {
      throw new BadInput("", "expected a recording of at most 24 hours, found a note after them");
    }
    return micros;
  }

  /** Knows how far a reader came. */
  private static final class Counting extends FilterInputStream {
    private int position;
    private int marked;
    private int furthest;

    Counting(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int value = super.read();
      moved(value < 0 ? 0 : 1);
      return value;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      int count = super.read(into, offset, length);
      moved(Math.max(count, 0));
      return count;
    }

    @Override
    public synchronized void mark(int limit) {
      super.mark(limit);
      marked = position;
    }

    @Override
    public synchronized void reset() throws IOException {
      super.reset();
      position = marked;
    }

    private void moved(int bytes) {
      position += bytes;
      furthest = Math.max(furthest, position);
    }
  }
}

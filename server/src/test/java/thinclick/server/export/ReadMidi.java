package thinclick.server.export;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/** Reads the onsets of a Standard MIDI File with its tempo map, so that files can be compared. */
record ReadMidi(int division, List<String> tracks, List<Onset> onsets, double lengthMillis) {
  /** A note; {@code millis} from the start of the file. */
  record Onset(
      int track, long tick, double millis, int channel, int key, int velocity, long offTick) {}

  static ReadMidi of(byte[] file) throws IOException, InvalidMidiDataException {
    Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(file));
    TreeMap<Long, Integer> tempos = new TreeMap<>();
    tempos.put(0L, 500_000); // the format's default, 120 quarters a minute
    List<String> names = new ArrayList<>();
    for (Track track : sequence.getTracks()) {
      String name = "";
      for (int i = 0; i < track.size(); i++) {
        if (track.get(i).getMessage() instanceof MetaMessage meta) {
          byte[] data = meta.getData();
          if (meta.getType() == 0x51) {
            tempos.put(
                track.get(i).getTick(),
                (data[0] & 0xFF) << 16 | (data[1] & 0xFF) << 8 | data[2] & 0xFF);
          } else if (meta.getType() == 3) {
            name = new String(data, java.nio.charset.StandardCharsets.UTF_8);
          }
        }
      }
      names.add(name);
    }
    int division = sequence.getResolution();
    List<Onset> onsets = new ArrayList<>();
    Track[] tracks = sequence.getTracks();
    for (int t = 0; t < tracks.length; t++) {
      for (int i = 0; i < tracks[t].size(); i++) {
        MidiEvent event = tracks[t].get(i);
        if (event.getMessage() instanceof ShortMessage on && sounds(on)) {
          onsets.add(
              new Onset(
                  t,
                  event.getTick(),
                  millis(event.getTick(), tempos, division),
                  on.getChannel(),
                  on.getData1(),
                  on.getData2(),
                  off(tracks[t], i, on)));
        }
      }
    }
    onsets.sort(Comparator.comparingLong(Onset::tick));
    return new ReadMidi(
        division, names, onsets, millis(sequence.getTickLength(), tempos, division));
  }

  List<Long> ticks(int track) {
    return onsets.stream().filter(onset -> onset.track() == track).map(Onset::tick).toList();
  }

  private static boolean sounds(ShortMessage message) {
    return message.getCommand() == ShortMessage.NOTE_ON && message.getData2() > 0;
  }

  private static long off(Track track, int from, ShortMessage on) {
    for (int i = from + 1; i < track.size(); i++) {
      if (track.get(i).getMessage() instanceof ShortMessage message
          && message.getChannel() == on.getChannel()
          && message.getData1() == on.getData1()
          && (message.getCommand() == ShortMessage.NOTE_OFF
              || message.getCommand() == ShortMessage.NOTE_ON)) {
        return track.get(i).getTick();
      }
    }
    throw new AssertionError("a note without an end: key " + on.getData1());
  }

  private static double millis(long tick, TreeMap<Long, Integer> tempos, int division) {
    double micros = 0;
    long last = 0;
    int tempo = 0;
    for (var change : tempos.headMap(tick, true).entrySet()) {
      micros += (double) (change.getKey() - last) * tempo / division;
      last = change.getKey();
      tempo = change.getValue();
    }
    return (micros + (double) (tick - last) * tempo / division) / 1000;
  }
}

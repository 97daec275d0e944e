package thinclick.client.window.settings;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.client.input.KeyHalf;
import thinclick.client.input.NoteFilter;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * What is remembered of what is tapped on: the letters of the only chair, what was learned of each
 * pad, and whose a pad was shown to be. What was learned holds for the pad of that name alone.
 *
 * @param half the letters of the only chair
 * @param learned what counts on which pad, the newest first
 * @param pads whose a pad is, the newest first
 */
@JsonPropertyOrder({"format", "version"})
public record InputSettings(
    String format, int version, KeyHalf half, List<Learned> learned, List<Pad> pads) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.input";

  /** The version this code writes and the only one it reads. */
  public static final int VERSION = 1;

  /** What it is called in its folder. */
  public static final String NAME = "input.json";

  private static final int MOST = 64;
  private static final int CHANNELS = 16;

  /** Where nothing is remembered. */
  public static final InputSettings FIRST =
      new InputSettings(FORMAT, VERSION, KeyHalf.ALL, List.of(), List.of());

  /**
   * What was learned of a pad.
   *
   * @param input the name of the MIDI input
   * @param leastVelocity softer strokes do not count, 1 to 127
   * @param channel the only one that counts, 1 to 16; null for all
   */
  public record Learned(String input, int leastVelocity, @Nullable Integer channel) {
    public Learned {
      Check.length("input", Check.present("input", input), 0, 256);
      Check.range("leastVelocity", leastVelocity, 1L, 127);
      if (channel != null) {
        Check.range("channel", channel, 1L, CHANNELS);
      }
    }

    /** As it is written down. */
    static Learned of(String input, NoteFilter filter) {
      return new Learned(
          input, filter.leastVelocity(), filter.channel() < 0 ? null : filter.channel() + 1);
    }

    /** What counts on it. */
    public NoteFilter filter() {
      return new NoteFilter(leastVelocity, channel == null ? -1 : channel - 1);
    }
  }

  /**
   * A pad that was shown to be somebody's.
   *
   * @param input the name of the MIDI input
   * @param channel the channel it plays on, 1 to 16
   * @param player whose it is; empty for the player whose window this is
   */
  public record Pad(String input, int channel, String player) {
    public Pad {
      Check.length("input", Check.present("input", input), 0, 256);
      Check.range("channel", channel, 1L, CHANNELS);
      Check.length("player", Check.present("player", player), 0, 128);
    }

    boolean isOn(String whichInput, int whichChannel) {
      return input.equals(whichInput) && channel == whichChannel;
    }
  }

  public InputSettings {
    if (!FORMAT.equals(format)) {
      throw new BadInput("format", "expected \"" + FORMAT + "\", found \"" + format + "\"");
    }
    if (version != VERSION) {
      throw new BadInput("version", "expected " + VERSION + ", found " + version);
    }
    Check.present("half", half);
    learned = Check.list("learned", learned);
    Check.size("learned", learned, 0, MOST);
    once("learned", learned.stream().map(Learned::input).toList());
    pads = Check.list("pads", pads);
    Check.size("pads", pads, 0, MOST);
    once("pads", pads.stream().map(pad -> pad.input() + " on channel " + pad.channel()).toList());
  }

  private static void once(String field, List<String> named) {
    Set<String> seen = new HashSet<>();
    for (String name : named) {
      if (!seen.add(name)) {
        throw new BadInput(field, "expected each once, found " + name + " twice");
      }
    }
  }

  /** The file they are kept in. */
  public static KeptFile<InputSettings> file(Path folder) {
    return new KeptFile<>(folder, NAME, InputSettings.class, FIRST);
  }

  /** With other letters for the only chair. */
  public InputSettings with(KeyHalf letters) {
    return new InputSettings(format, version, letters, learned, pads);
  }

  /** With what was learned of a pad, in place of what was learned of it before. */
  public InputSettings withLearned(String input, NoteFilter filter) {
    List<Learned> next = new ArrayList<>(learned);
    next.removeIf(one -> one.input().equals(input));
    next.add(0, Learned.of(input, filter));
    return new InputSettings(format, version, half, newest(next), pads);
  }

  /** With nothing learned of any pad. */
  public InputSettings withoutLearned() {
    return new InputSettings(format, version, half, List.of(), pads);
  }

  /**
   * With a pad that is somebody's from now on.
   *
   * @param channel 1 to 16
   * @param player whose; empty for the player whose window this is
   */
  public InputSettings withPad(String input, int channel, String player) {
    List<Pad> next = new ArrayList<>(pads);
    next.removeIf(pad -> pad.isOn(input, channel));
    next.add(0, new Pad(input, channel, player));
    return new InputSettings(format, version, half, learned, newest(next));
  }

  /** The pads that are somebody's, by name. */
  public List<String> padsOf(String player) {
    return pads.stream()
        .filter(pad -> pad.player().equals(player))
        .map(Pad::input)
        .distinct()
        .sorted()
        .toList();
  }

  private static <T> List<T> newest(List<T> all) {
    return all.subList(0, Math.min(MOST, all.size()));
  }
}

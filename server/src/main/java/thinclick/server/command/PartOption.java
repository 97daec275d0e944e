package thinclick.server.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.gathering.Gathering;
import thinclick.server.gathering.MidiRecording;
import thinclick.server.gathering.RecordedNote;

/**
 * One {@code --part NAME=FILE[:CHANNEL]}.
 *
 * @param player the name
 * @param file the recording
 * @param channel from 1; null for all
 */
record PartOption(String player, Path file, @Nullable Integer channel) {
  private static final Pattern WRITTEN = Pattern.compile("([^=]+)=(.+?)(?::(\\d{1,9}))?");

  /** Reads all of them; each player comes once. */
  static List<PartOption> parse(List<String> written) {
    List<PartOption> parts = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (String one : written) {
      PartOption part = parse(one);
      if (!names.add(part.player)) {
        throw new BadInput(
            "--part", "expected a player not named before, found \"" + part.player + "\" again");
      }
      parts.add(part);
    }
    return List.copyOf(parts);
  }

  private static PartOption parse(String written) {
    Matcher matcher = WRITTEN.matcher(written);
    if (!matcher.matches() || matcher.group(1).isBlank()) {
      throw new BadInput(
          "--part", "expected NAME=FILE or NAME=FILE:CHANNEL, found \"" + written + "\"");
    }
    Integer channel = matcher.group(3) == null ? null : Integer.valueOf(matcher.group(3));
    if (channel != null && (channel < 1 || channel > 16)) {
      throw new BadInput("--part", "expected a channel from 1 to 16, found " + channel);
    }
    try {
      return new PartOption(matcher.group(1).strip(), Path.of(matcher.group(2)), channel);
    } catch (InvalidPathException wrong) {
      throw new BadInput("--part", "expected a file's name, found \"" + matcher.group(2) + "\"");
    }
  }

  /** Reads the recording; one without a note is refused, since it is sure to be the wrong one. */
  Gathering.Recorded read() {
    MidiRecording recording = InputFile.read(file, MidiRecording::read);
    List<RecordedNote> notes = channel == null ? recording.notes() : recording.onChannel(channel);
    if (notes.isEmpty()) {
      throw new BadInput(
          file.toString(),
          "expected notes"
              + (channel == null ? "" : " on channel " + channel)
              + ", found "
              + (recording.notes().isEmpty()
                  ? "none"
                  : "them on " + String.join(", ", channels(recording))));
    }
    return new Gathering.Recorded(player, notes);
  }

  private static List<String> channels(MidiRecording recording) {
    return recording.notes().stream()
        .map(RecordedNote::channel)
        .distinct()
        .sorted()
        .map(String::valueOf)
        .toList();
  }
}

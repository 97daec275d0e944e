package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.Check;
import thinclick.server.gathering.Gathering;

/** {@code gather}: recorded MIDI files into a take that can be reviewed. */
@Command(
    name = "gather",
    mixinStandardHelpOptions = true,
    description = "Makes a take from recorded Standard MIDI Files, one for each player.")
final class GatherCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Option(
      names = "--drill",
      required = true,
      paramLabel = "TITLE|FILE",
      description =
          "What was played: a drill's title, a drill file, or a take file whose parts are used."
              + " Titles are found in any case, with hyphens for spaces.")
  private String drill = "";

  @Option(
      names = "--part",
      required = true,
      paramLabel = "NAME=FILE[:CHANNEL]",
      description =
          "A player and the recording, by itself or one channel of it (1 to 16)."
              + " Chairs are filled in order; with a take file a name in it gets that part.")
  private List<String> parts = List.of();

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      description = "Beats a minute, 30 to 320; left out, the drill's or the take's own.")
  private @Nullable Double tempo;

  @Option(
      names = "--offset-millis",
      paramLabel = "N",
      description =
          "Where bar 1 lies in the recordings, from their start: 0 if left out,"
              + " negative where they were started after bar 1.")
  private double offsetMillis;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Which deal of the drill was played; left out, the drill's own.")
  private @Nullable Long seed;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "FILE",
      description = "The take file to write.")
  private Path output = Path.of("");

  @Option(names = "--replace", description = "Write over an output file that is there.")
  private boolean replace;

  @Override
  public Integer call() {
    OutputFile.check(output, replace);
    List<PartOption> given = PartOption.parse(parts);
    List<String> players = given.stream().map(PartOption::player).toList();
    Take frame = TakeFrame.of(drill, players, tempo, seed, Gathering.startMicros(offsetMillis));
    List<Gathering.Recorded> recordings = given.stream().map(PartOption::read).toList();
    Take take = frame.withAttacks(Gathering.attacks(recordings, offsetMillis));
    OutputFile.write(output, FileCodec.write(take), replace);
    say(take);
    return 0;
  }

  /** Says what was gathered, so that a wrong offset is seen at once. */
  private void say(Take take) {
    PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
    out.printf(
        Locale.ROOT,
        "%s: \"%s\", %d bars of %s at %s, %d attacks%n",
        output,
        take.title(),
        take.plan().bars(),
        take.meter(),
        Check.number(take.tempo()),
        take.attacks().size());
    for (Part part : take.parts()) {
      List<Attack> own =
          take.attacks().stream().filter(a -> a.player().equals(part.player())).toList();
      double firstSeconds = (own.get(0).micros() - take.startMicros()) / 1e6;
      out.printf(
          Locale.ROOT,
          "  %s: %d written, %d played, the first %.3f s %s bar 1%n",
          part.player(),
          part.attackSteps().size(),
          own.size(),
          Math.abs(firstSeconds),
          firstSeconds < 0 ? "before" : "after");
    }
    out.flush();
  }
}

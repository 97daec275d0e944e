package thinclick.client.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thinclick.client.rehearse.Rehearsal;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.server.material.Stock;

/** {@code rehearse}: a whole rehearsal by itself, ending with the review. */
@Command(
    name = "rehearse",
    mixinStandardHelpOptions = true,
    description = {
      "Runs a whole rehearsal by itself: a host on a free port, stand-ins who each",
      "come in over a socket, the click thinned bar by bar, the review at the end."
    })
final class RehearseCommand implements Callable<Integer> {
  private static final String USUAL_DRILL = "Four-chair canon";

  @Option(
      names = "--drill",
      paramLabel = "TITLE",
      description = "A drill of the stock (default: ${DEFAULT-VALUE}).",
      defaultValue = USUAL_DRILL)
  private String title = USUAL_DRILL;

  @Option(
      names = "--players",
      paramLabel = "N",
      description = "How many stand-ins play, 1 to 24 (default: ${DEFAULT-VALUE}).",
      defaultValue = "4")
  private int players = 4;

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      description = "Beats a minute (default: where the drill starts).")
  private @Nullable Double tempo;

  @Option(
      names = "--bars",
      paramLabel = "N",
      description = "Length of the take in bars (default: about half a minute).")
  private @Nullable Integer bars;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Fixes the deal and the stand-ins' noise (default: ${DEFAULT-VALUE}).",
      defaultValue = "1")
  private long seed = 1;

  @Option(names = "--take", paramLabel = "FILE", description = "Writes the take to a file.")
  private @Nullable Path takeFile;

  @Option(names = "--replace", description = "Writes over a take file that is there.")
  private boolean replace;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Drill drill = Stock.find(title);
    if (takeFile != null) {
      OutputFile.check(takeFile, replace);
    }
    Take take = Rehearsal.of(drill, players, tempo, bars, seed, out).run();
    if (takeFile != null) {
      OutputFile.write(takeFile, FileCodec.write(take), replace);
      out.println();
      out.println("The take is in " + takeFile + ".");
    }
    out.flush();
    return 0;
  }
}

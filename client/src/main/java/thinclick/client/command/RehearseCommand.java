package thinclick.client.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thinclick.client.link.RoomAddress;
import thinclick.client.rehearse.Rehearsal;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Stock;

/** {@code rehearse}: a whole rehearsal by itself, ending with the review. */
@Command(
    name = "rehearse",
    mixinStandardHelpOptions = true,
    description = {
      "Runs a whole rehearsal by itself.",
      "A host on a free port, stand-ins who each come in over a socket, the click thinned stage by"
          + " stage, the review at the end."
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

  @Option(
      names = "--link",
      paramLabel = "LINK",
      description =
          "Opens the room at a host elsewhere instead of one of its own: the host's join"
              + " link, thinclick://..., or its address. That host keeps the take.")
  private @Nullable String link;

  @Option(
      names = "--host-key",
      paramLabel = "KEY",
      description = "What that host asks for before it opens a room (default: nothing).")
  private @Nullable String hostKey;

  @Option(names = "--take", paramLabel = "FILE", description = "Writes the take to a file.")
  private @Nullable Path takeFile;

  @Option(names = "--replace", description = "Writes over a take file that is there.")
  private boolean replace;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Drill drill = drill();
    if (link != null) {
      return elsewhere(link, Rehearsal.of(drill, players, tempo, bars, seed, out));
    }
    if (hostKey != null) {
      throw new BadInput("--host-key", "expected it together with --link, found it alone");
    }
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

  private Drill drill() {
    try {
      return Stock.find(title);
    } catch (BadInput unknown) {
      throw new BadInput("--drill", unknown.says());
    }
  }

  private int elsewhere(String written, Rehearsal rehearsal) {
    if (takeFile != null) {
      throw new BadInput(
          "--take", "expected none with --link: that host keeps the take, take export writes it");
    }
    if (JoinLink.isOne(written) && JoinLink.parse(written).word() != null) {
      throw new BadInput(
          "--link", "expected the link of a host, found one of a room; stand-in comes into a room");
    }
    String takeId = rehearsal.runAt(RoomAddress.parse(written), hostKey);
    PrintWriter out = spec.commandLine().getOut();
    out.println();
    out.println("The host keeps the take as " + takeId + ".");
    out.flush();
    return 0;
  }
}

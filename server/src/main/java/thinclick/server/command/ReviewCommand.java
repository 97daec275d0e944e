package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.json.BadInput;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.ReviewPage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** {@code review TAKE}: says how a recorded take went. */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description = "Says how well a take was held together.")
final class ReviewCommand implements Callable<Integer> {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  @Parameters(arity = "1", paramLabel = "TAKE", description = "A take file.")
  private Path file = Path.of("");

  @Option(names = "--json", description = "Print every figure as JSON.")
  private boolean json;

  @Option(
      names = "--player",
      paramLabel = "NAME",
      description = "Print this player's own slip and nobody else's figures.")
  private @Nullable String player;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Analysis analysis = Scorer.analyse(InputFile.read(file, FileCodec::readTake));
    Speaker speaker = Speaker.english();
    Spoken spoken = Spoken.of(analysis, speaker);
    if (player != null) {
      checkPlayer(spoken, player);
    }
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(JSON.writeValueAsString(spoken.toJson()));
    } else {
      out.print(
          player == null
              ? ReviewPage.of(spoken, speaker)
              : ReviewPage.slip(spoken, player, speaker));
    }
    out.flush();
    return 0;
  }

  private static void checkPlayer(Spoken spoken, String name) {
    if (spoken.slip(name) == null) {
      List<String> names = spoken.slips().stream().map(Spoken.Slip::player).toList();
      throw new BadInput(
          "--player", "expected one of " + String.join(", ", names) + ", found \"" + name + "\"");
    }
  }
}

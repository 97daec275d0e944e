package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.file.FileCodec;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.ReviewText;
import thinclick.server.scoring.Scorer;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** {@code review TAKE}: says how a recorded take went. */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description = "Says how well a take was held together.")
public final class ReviewCommand implements Runnable {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  @Parameters(paramLabel = "TAKE", description = "A take file.")
  private Path file = Path.of("");

  @Option(names = "--json", description = "Print every figure as JSON.")
  private boolean json;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    Review review = Scorer.review(InputFile.read(file, FileCodec::readTake));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(JSON.writeValueAsString(review));
    } else {
      out.print(ReviewText.of(review));
    }
    out.flush();
  }
}

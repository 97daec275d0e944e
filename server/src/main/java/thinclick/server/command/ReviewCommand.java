package thinclick.server.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
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
    Review review = Scorer.review(read(file));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(JSON.writeValueAsString(review));
    } else {
      out.print(ReviewText.of(review));
    }
    out.flush();
  }

  /** Reads a take file; what is wrong with it is said with the file's name. */
  static Take read(Path file) {
    try {
      return FileCodec.readTake(Files.readAllBytes(file));
    } catch (NoSuchFileException missing) {
      throw new BadInput(file.toString(), "expected a take file, found nothing there");
    } catch (IOException problem) {
      throw new BadInput(file.toString(), "expected a readable take file, found " + problem);
    } catch (BadInput bad) {
      throw new BadInput(file.toString(), String.valueOf(bad.getMessage()));
    }
  }
}

package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.json.BadInput;
import thinclick.server.picture.ComparePicture;
import thinclick.server.picture.PlayerSheet;
import thinclick.server.picture.ReviewPicture;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.OwnReview;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.AttackTable;
import thinclick.server.words.Comparison;
import thinclick.server.words.ReviewPage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** {@code review TAKE}: says how a recorded take went. */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description = "Says how well a take was held together.")
final class ReviewCommand implements Callable<Integer> {

  @Parameters(
      arity = "1..2",
      paramLabel = "TAKE",
      description =
          "A take file; two are compared," + " where drill, tempo and click plan are the same.")
  private List<Path> files = List.of();

  @Option(names = "--json", description = "Print every figure as JSON.")
  private boolean json;

  @Option(
      names = "--player",
      paramLabel = "NAME",
      description = "Print this player's own slip and nobody else's figures.")
  private @Nullable String player;

  @Option(names = "--csv", description = "Print a row for every attack.")
  private boolean csv;

  @Mixin private PictureOption picture = new PictureOption();
  @Mixin private LanguageOption language = new LanguageOption();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    checkOptions();
    Speaker speaker = language.speaker();
    PictureFile drawn = picture.file();
    Analysis analysis = analyse(files.get(0));
    PrintWriter out = spec.commandLine().getOut();
    if (files.size() == 2) {
      Comparison comparison = compared(analysis);
      out.print(comparison.page(speaker));
      if (drawn != null) {
        PlayerSheet.Content sheet = ComparePicture.sheet(comparison, speaker);
        drawn.write(PlayerSheet.of(sheet), PlayerSheet.pages(sheet, drawn.paper()), speaker);
      }
    } else {
      out.print(told(analysis, speaker));
      if (drawn != null) {
        drawn.write(ReviewPicture.of(analysis, Spoken.of(analysis, speaker), speaker), speaker);
      }
    }
    out.flush();
    return 0;
  }

  private void checkOptions() {
    if (files.size() > 2) {
      throw new BadInput("TAKE", "expected one take or two, found " + files.size());
    }
    if (json && csv) {
      throw new BadInput("--csv", "expected either --json or --csv, found both");
    }
    if (files.size() == 2 && (json || csv || player != null)) {
      throw new BadInput(
          json ? "--json" : csv ? "--csv" : "--player", "expected one take, found two");
    }
    if (player != null && picture.wanted()) {
      throw new BadInput(
          "--picture", "expected without --player, as it shows everybody; found both");
    }
    if (player != null && csv) {
      throw new BadInput("--csv", "expected either --player or --csv, found both");
    }
  }

  private static Analysis analyse(Path file) {
    return Scorer.analyse(InputFile.read(file, FileCodec::readTake));
  }

  private Comparison compared(Analysis first) {
    Analysis second = analyse(files.get(1));
    try {
      return Comparison.of(first, second);
    } catch (BadInput differs) {
      throw new BadInput(files.get(1) + ": " + differs.where(), differs.says());
    }
  }

  private String told(Analysis analysis, Speaker speaker) {
    if (csv) {
      return AttackTable.of(analysis);
    }
    Spoken spoken = Spoken.of(analysis, speaker);
    if (player != null) {
      checkPlayer(spoken, player);
    }
    if (json) {
      JsonNode whole = spoken.toJson();
      // Made here, not once for the class: every command would wait for it at the start.
      JsonMapper json = JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
      return json.writeValueAsString(player == null ? whole : OwnReview.of(whole, player)) + "\n";
    }
    return player == null
        ? ReviewPage.of(spoken, speaker)
        : ReviewPage.slip(spoken, player, speaker);
  }

  private static void checkPlayer(Spoken spoken, String name) {
    if (spoken.slip(name) == null) {
      List<String> names = spoken.slips().stream().map(Spoken.Slip::player).toList();
      throw new BadInput(
          "--player", "expected one of " + String.join(", ", names) + ", found \"" + name + "\"");
    }
  }
}

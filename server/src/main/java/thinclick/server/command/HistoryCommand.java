package thinclick.server.command;

import java.io.PrintWriter;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletionException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thinclick.protocol.json.BadInput;
import thinclick.server.history.Course;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.Entry;
import thinclick.server.history.HistoryJson;
import thinclick.server.history.HistoryPage;
import thinclick.server.history.HistoryPicture;
import thinclick.server.host.ClassBook;
import thinclick.server.host.KeptHistory;
import thinclick.server.material.Nearest;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Season;
import thinclick.server.season.SeasonJson;
import thinclick.server.season.SeasonPage;
import thinclick.server.season.SeasonPicture;
import thinclick.server.store.Store;
import thinclick.server.words.Speaker;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** {@code history}: the course over weeks, at like drill, tempo and click plan. */
@Command(
    name = "history",
    mixinStandardHelpOptions = true,
    description = "Says how a band or a player got on, drill by drill, and what is due next.")
final class HistoryCommand implements Callable<Integer> {
  @Mixin private DatabaseOption database = new DatabaseOption();

  @Option(names = "--player", paramLabel = "NAME", description = "One player's course.")
  private @Nullable String player;

  @Option(names = "--drill", paramLabel = "TITLE", description = "One drill's takes.")
  private @Nullable String drill;

  @Option(
      names = "--class",
      paramLabel = "TITLE",
      description =
          "A class: who took part, levels, rungs, courses, what a thinner click would do.")
  private @Nullable String classTitle;

  @Option(names = "--json", description = "Print every figure as JSON.")
  private boolean json;

  @Mixin private PictureOption picture = new PictureOption();
  @Mixin private LanguageOption language = new LanguageOption();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    PictureFile drawn = picture.file();
    Season season = season();
    if (season != null && player == null && drill == null) {
      return tell(season, drawn);
    }
    List<Entry> all =
        season == null ? entries() : season.takes().stream().map(ClassTake::entry).toList();
    List<CourseSheet> courses = CourseSheet.of(Course.of(wanted(all)), player);
    PrintWriter out = spec.commandLine().getOut();
    ZoneId zone = ZoneId.systemDefault();
    Speaker speaker = language.speaker();
    out.print(
        json
            ? pretty().writeValueAsString(HistoryJson.of(courses, player)) + "\n"
            : HistoryPage.of(courses, zone, speaker));
    out.flush();
    if (drawn != null) {
      drawn.write(HistoryPicture.of(courses, zone, speaker), speaker);
    }
    return 0;
  }

  private Integer tell(Season season, @Nullable PictureFile drawn) {
    ZoneId zone = ZoneId.systemDefault();
    Speaker speaker = language.speaker();
    PrintWriter out = spec.commandLine().getOut();
    out.print(
        json
            ? pretty().writeValueAsString(SeasonJson.of(season, zone)) + "\n"
            : SeasonPage.of(season, zone, speaker));
    out.flush();
    if (drawn != null) {
      drawn.write(SeasonPicture.of(season, zone, speaker), speaker);
    }
    return 0;
  }

  /** The class that is asked for; null where none is. */
  private @Nullable Season season() {
    String title = classTitle;
    if (title == null) {
      return null;
    }
    database.check();
    try (ClassBook book =
        ClassBook.open(database.file(), null, InstantSource.system(), language.speaker())) {
      return book.season(title);
    }
  }

  private List<Entry> wanted(List<Entry> all) {
    List<Entry> ofDrill =
        all.stream()
            .filter(
                one ->
                    drill == null
                        || Nearest.folded(one.key().title()).equals(Nearest.folded(drill)))
            .toList();
    if (drill != null && ofDrill.isEmpty()) {
      throw new BadInput("--drill", "expected a drill that was played, found \"" + drill + "\"");
    }
    String name = player;
    if (name == null) {
      return ofDrill;
    }
    List<Entry> ofPlayer = ofDrill.stream().filter(one -> one.has(name)).toList();
    if (ofPlayer.isEmpty()) {
      throw new BadInput("--player", "expected somebody who played, found \"" + name + "\"");
    }
    return ofPlayer;
  }

  private List<Entry> entries() {
    database.check();
    try (Store store = Store.open(database.file(), InstantSource.system(), available -> {})) {
      return KeptHistory.entries(store, language.speaker());
    } catch (CompletionException problem) {
      throw new BadInput(
          "--db", "expected a database that can be used, found " + problem.getCause());
    }
  }

  /** Made where it is needed, since every command would wait for it at the start. */
  private static JsonMapper pretty() {
    return JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  }
}

package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the operator's README shows and explains of {@code /metrics} is what a host answers. */
class MetricsInReadmeTest {
  private static final Path README = Path.of("README.md");
  private static final Pattern VALUE = Pattern.compile("(?m)^(thinclick_\\w+) \\S+$");
  private static final Pattern IN_A_TABLE = Pattern.compile("`(thinclick_\\w+)`");

  @TempDir Path folder;

  @Test
  void showsAndExplainsEveryFigureThatAHostTellsAndNoOther() throws Exception {
    String told;
    try (RehearsalHost host =
        RehearsalHost.start(HostOptions.local(folder.resolve("room.db")).at("127.0.0.1", 0))) {
      told = metrics(host.port());
    }
    List<String> figures = names(VALUE, told);
    String readme = Files.readString(README);

    assertThat(figures).hasSizeGreaterThan(10);
    assertThat(names(VALUE, readme)).as("shown in " + README).isEqualTo(figures);
    assertThat(new TreeSet<>(names(IN_A_TABLE, readme)))
        .as("explained in " + README)
        .isEqualTo(new TreeSet<>(figures.stream().map(MetricsInReadmeTest::whole).toList()));
  }

  /** The three lines of a figure with a distribution are one figure. */
  private static String whole(String name) {
    return name.replaceFirst("_(count|sum|max)$", "");
  }

  private static List<String> names(Pattern pattern, String text) {
    return pattern.matcher(text).results().map((MatchResult found) -> found.group(1)).toList();
  }

  private static String metrics(int port) throws IOException, InterruptedException {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/metrics")).build(),
            HttpResponse.BodyHandlers.ofString())
        .body();
  }
}

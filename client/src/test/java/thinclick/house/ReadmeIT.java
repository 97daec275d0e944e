package thinclick.house;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs every command that README.md shows, with the jars that the build has just made.
 *
 * <p>A block fenced as {@code sh} is a list of commands, run in one empty folder that sees the jars
 * under the paths the README uses: those that name the same file in their order, all others beside
 * them, since the rehearsal alone takes half a minute. The build commands themselves are this very
 * run.
 */
class ReadmeIT {
  private static final Path TOP = top();
  private static final int AT_A_TIME = 3;

  @TempDir static Path folder;

  @Test
  void theReadmeShowsTheTwoCommandsFirst() {
    List<String> lines = shellLines();

    assertThat(lines.get(0))
        .startsWith("mvn ")
        .contains("java -jar client/target/thinclick.jar rehearse");
    assertThat(lines.get(1)).startsWith("mvn ").contains("verify");
  }

  @TestFactory
  Stream<DynamicTest> everyCommandShownRuns() throws IOException {
    for (String file :
        List.of(
            "client/target/thinclick.jar",
            "server/target/thinclick-server.jar",
            "server/host.options")) {
      Path link = folder.resolve(file);
      Files.createDirectories(link.getParent());
      Files.createSymbolicLink(link, TOP.resolve(file));
    }
    ExecutorService several = Executors.newFixedThreadPool(AT_A_TIME);
    Map<String, Future<?>> last = new HashMap<>();
    List<DynamicTest> tests = new ArrayList<>();
    for (String shown : shellLines()) {
      String line =
          shown.contains("&& java -jar") ? shown.substring(shown.indexOf("java -jar")) : shown;
      if (!line.startsWith("mvn")) {
        List<String> files = files(line);
        List<Future<?>> before = files.stream().map(last::get).filter(Objects::nonNull).toList();
        Future<?> ran =
            several.submit(
                () -> {
                  for (Future<?> one : before) {
                    one.get();
                  }
                  run(line);
                  return null;
                });
        files.forEach(file -> last.put(file, ran));
        tests.add(DynamicTest.dynamicTest(line, ran::get));
      }
    }
    several.shutdown();
    return tests.stream();
  }

  /** What a command reads or writes in the folder. */
  private static List<String> files(String line) {
    return Stream.of(line.split(" ")).filter(word -> word.matches("[\\w.-]+\\.(json|db)")).toList();
  }

  /** What serves must say where, a window must stay open, all others must end well. */
  private static void run(String line) throws IOException, InterruptedException {
    Path out = Files.createTempFile(folder, "out", ".txt");
    boolean serves = line.contains("thinclick-server.jar serve");
    boolean opens =
        line.matches("java -jar client/target/thinclick\\.jar( --(server|room|name).*)?");
    Process process =
        new ProcessBuilder("bash", "-c", "exec " + line)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(out.toFile())
            .start();
    try {
      if (serves) {
        await()
            .atMost(Duration.ofSeconds(30))
            .until(() -> !process.isAlive() || Files.readString(out).contains("ws://"));
        assertThat(process.isAlive()).as(Files.readString(out)).isTrue();
      } else if (opens && System.getenv("DISPLAY") != null) {
        await()
            .during(Duration.ofSeconds(5))
            .atMost(Duration.ofSeconds(10))
            .untilAsserted(() -> assertThat(process.isAlive()).as(Files.readString(out)).isTrue());
      } else if (opens) {
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(Files.readString(out)).as("says that there is no display").contains("display");
      } else {
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("ends within two minutes").isTrue();
        assertThat(process.exitValue()).as(line + "\n" + Files.readString(out)).isZero();
      }
    } finally {
      process.destroy();
      process.waitFor(10, TimeUnit.SECONDS);
      process.destroyForcibly();
    }
  }

  private static List<String> shellLines() {
    List<String> found = new ArrayList<>();
    boolean inside = false;
    StringBuilder open = new StringBuilder();
    for (String line : readme()) {
      if (line.startsWith("```")) {
        inside = line.equals("```sh");
      } else if (inside && line.endsWith("\\")) {
        open.append(line, 0, line.length() - 1);
      } else if (inside && !line.isBlank() && !line.startsWith("#")) {
        found.add(open + line);
        open.setLength(0);
      }
    }
    return found;
  }

  private static List<String> readme() {
    try {
      return Files.readAllLines(TOP.resolve("README.md"), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path top() {
    Path here = Path.of("").toAbsolutePath();
    while (!Files.exists(here.resolve("LICENSE"))) {
      here = here.getParent();
    }
    return here;
  }
}

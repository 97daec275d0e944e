package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The click through the system's real sound path, into a sink and back from its monitor. */
@Tag("long")
class NullSinkTest {
  private static final Pattern SPACING =
      Pattern.compile(
          "spacing p50 [\\d.]+ p99 ([\\d.]+) worst [\\d.]+ clicks (\\d+) stumbles (\\d+)");

  @TempDir Path folder;

  @Test
  void clicksComeOutEvenlySpaced() throws Exception {
    assumeTrue(NullSink.missing().isEmpty(), NullSink.missing());
    try (NullSink sink = NullSink.start(folder)) {
      List<String> said = sink.run(SinkProbe.class, "40");
      assumeTrue(
          said.stream().noneMatch(line -> line.startsWith("spacing none: only")),
          "the machine was so busy that too few clicks came out in a row");
      Matcher spacing =
          said.stream()
              .map(SPACING::matcher)
              .filter(Matcher::find)
              .findFirst()
              .orElseThrow(() -> new AssertionError("no spacing was said: " + said));
      assumeTrue(spacing.group(3).equals("0"), "the machine was so busy that the output ran dry");
      assertThat(Double.parseDouble(spacing.group(1))).as("%s", said).isLessThanOrEqualTo(1.0);
      assertThat(spacing.group(2)).isEqualTo("40");
    }
  }
}

package thinclick.server.watch;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.LoggingEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.slf4j.LoggerFactory;
import org.slf4j.event.KeyValuePair;

/** What strangers write does not become the log's own lines, colours or values. */
class LogLineTest {
  private static final LogLine LINES = new LogLine();

  private static LoggingEvent event(String says, Throwable fault) {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    LoggingEvent event =
        new LoggingEvent(
            "", context.getLogger("thinclick.server.net.Rooms"), Level.INFO, says, fault, null);
    event.setTimeStamp(0);
    return event;
  }

  private static String line(String key, String value) {
    LoggingEvent event = event("open", null);
    event.addKeyValuePair(new KeyValuePair(key, value));
    return LINES.doLayout(event).stripTrailing();
  }

  @Test
  void eventIsOneLineOfValues() {
    LoggingEvent event = event("open", null);
    event.addKeyValuePair(new KeyValuePair("room", "bl42stjbur3nr"));
    event.addKeyValuePair(new KeyValuePair("epoch", 2L));

    assertThat(LINES.doLayout(event))
        .isEqualTo(
            "time=1970-01-01T00:00:00Z level=INFO in=Rooms room=bl42stjbur3nr epoch=2"
                + " says=\"open\""
                + System.lineSeparator());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "x\ntime=1970-01-01T00:00:00Z level=ERROR in=Store says=\"forged\"",
        "x\r\nforged",
        "\u001b[31mred\u001b[2J",
        "\u202egnp.exe",
        "\u0000",
        "\u2028forged",
        "\ud800alone",
        "a=b c=d",
        "\"; says=\"forged",
        "\\",
        ""
      })
  void valueStaysAValue(String hostile) {
    String line = line("name", hostile);

    assertThat(line)
        .hasLineCount(1)
        .startsWith("time=1970-01-01T00:00:00Z level=INFO in=Rooms name=\"")
        .endsWith(" says=\"open\"");
    assertThat(line.codePoints())
        .noneMatch(
            point ->
                Character.isISOControl(point)
                    || Character.getType(point) == Character.FORMAT
                    || Character.getType(point) == Character.SURROGATE);
    assertThat(line.replaceAll("\\\\.", "").chars().filter(c -> c == '"').count())
        .as("quotes that are not escaped: two of the value, two of says")
        .isEqualTo(4);
  }

  @Test
  void valueIsCutAtTwoHundredCharactersAndSaysSo() {
    assertThat(line("name", "\u001b".repeat(5_000)))
        .contains("name=\"" + "\\u001b".repeat(33) + "...\"")
        .hasSizeLessThan(300);
    assertThat(line("name", "a".repeat(5_000))).contains("=\"" + "a".repeat(200) + "...\"");
    assertThat(line("name", "a".repeat(200))).contains("name=" + "a".repeat(200) + " ");
    assertThat(LINES.doLayout(event("\n".repeat(9_000), null)))
        .hasLineCount(1)
        .hasSizeLessThan(300);
  }

  @Test
  void faultIsInTheSameLineWithWhereItWas() {
    String line =
        LINES.doLayout(
            event(
                "no backup", new IllegalStateException("disk\nfull", new RuntimeException("why"))));

    assertThat(line)
        .hasLineCount(1)
        .contains("fault=\"java.lang.IllegalStateException: disk\\u000afull | ")
        .contains("LogLineTest.faultIsInTheSameLineWithWhereItWas")
        .contains("because java.lang.RuntimeException: why");
  }
}

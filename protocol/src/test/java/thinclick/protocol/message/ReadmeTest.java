package thinclick.protocol.message;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The description of the wire leaves nothing out. */
class ReadmeTest {
  private static final String README = read();

  private static String read() {
    try {
      return Files.readString(Path.of("README.md"));
    } catch (java.io.IOException missing) {
      throw new java.io.UncheckedIOException(missing);
    }
  }

  static Stream<JsonSubTypes.Type> messages() {
    return Stream.of(ClientMessage.class, ServerMessage.class)
        .flatMap(kind -> Arrays.stream(kind.getAnnotation(JsonSubTypes.class).value()));
  }

  @ParameterizedTest
  @MethodSource("messages")
  void everyMessageHasItsLineWithEveryField(JsonSubTypes.Type message) {
    String line =
        README
            .lines()
            .filter(each -> each.startsWith("| `" + message.name() + "`"))
            .findFirst()
            .orElseThrow(() -> new AssertionError("no line for " + message.name()));
    boolean leaders = LeaderCommand.class.isAssignableFrom(message.value());
    for (RecordComponent field : message.value().getRecordComponents()) {
      boolean common =
          leaders && (field.getName().equals("requestId") || field.getName().equals("revision"));
      if (!common) {
        assertThat(line).contains("`" + field.getName() + "`");
      }
    }
  }

  @ParameterizedTest
  @EnumSource(ErrorCode.class)
  void everyErrorIsExplained(ErrorCode code) throws Exception {
    String name = code.getClass().getField(code.name()).getAnnotation(JsonProperty.class).value();
    assertThat(README).contains("| `" + name + "` |");
  }

  @ParameterizedTest
  @EnumSource(CloseCode.class)
  void everyCloseCodeIsExplained(CloseCode code) {
    assertThat(README).contains("| " + code.number() + " |");
  }

  @Test
  void everyLimitOfAFrameIsSaid() {
    assertThat(README).contains("16,384").contains("262,144");
  }
}

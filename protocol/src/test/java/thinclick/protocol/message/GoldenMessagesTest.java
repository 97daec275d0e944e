package thinclick.protocol.message;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Messages of every wire version, one a line as they stand on the wire, in {@code
 * src/test/resources/messages/<version>/}. A line once released is never changed: later code must
 * still read it. A new message or field gets a new line.
 */
class GoldenMessagesTest {
  private static final JsonMapper LOOSE = JsonMapper.builder().build();

  static Stream<String> clientLines() {
    return lines("client").stream();
  }

  static Stream<String> serverLines() {
    return lines("server").stream();
  }

  @ParameterizedTest
  @MethodSource("clientLines")
  void whatAClientSaysIsReadAndWrittenTheSame(String line) {
    ClientMessage message = MessageCodec.readClient(line);

    assertThat(MessageCodec.write(message)).isEqualTo(line);
    assertThat(MessageCodec.readClient(MessageCodec.write(message))).isEqualTo(message);
  }

  @ParameterizedTest
  @MethodSource("serverLines")
  void whatAServerSaysIsReadAndWrittenTheSame(String line) {
    ServerMessage message = MessageCodec.readServer(line);

    assertThat(MessageCodec.write(message)).isEqualTo(line);
    assertThat(MessageCodec.readServer(MessageCodec.write(message))).isEqualTo(message);
  }

  /** A type or field without a line here is one that nobody has promised to keep reading. */
  @ParameterizedTest
  @ValueSource(classes = {ClientMessage.class, ServerMessage.class})
  void everyTypeAndEveryFieldHasALine(Class<?> side) {
    List<JsonNode> lines =
        lines(side == ClientMessage.class ? "client" : "server").stream()
            .map(LOOSE::readTree)
            .toList();
    for (JsonSubTypes.Type type : side.getAnnotation(JsonSubTypes.class).value()) {
      List<JsonNode> ofType =
          lines.stream()
              .filter(line -> line.get("type").stringValue().equals(type.name()))
              .toList();
      assertThat(ofType).as("add a line of type %s", type.name()).isNotEmpty();
      for (RecordComponent field : type.value().getRecordComponents()) {
        assertThat(ofType)
            .as("add a line of type %s with %s", type.name(), field.getName())
            .anyMatch(line -> line.has(field.getName()));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(classes = {ClientMessage.class, ServerMessage.class})
  void everyMessageClassHasAWireName(Class<?> side) {
    assertThat(
            Arrays.stream(side.getAnnotation(JsonSubTypes.class).value())
                .map(JsonSubTypes.Type::value)
                .map(type -> (Object) type))
        .containsExactlyInAnyOrderElementsOf(records(side).map(type -> (Object) type).toList());
  }

  private static Stream<Class<?>> records(Class<?> type) {
    Class<?>[] permitted = type.getPermittedSubclasses();
    return permitted == null
        ? Stream.of(type)
        : Arrays.stream(permitted).flatMap(GoldenMessagesTest::records);
  }

  private static List<String> lines(String side) {
    Function<Integer, String> file = version -> "/messages/" + version + "/" + side + ".jsonl";
    return Stream.iterate(1, version -> version <= MessageCodec.VERSION, version -> version + 1)
        .flatMap(version -> text(file.apply(version)).lines())
        .toList();
  }

  private static String text(String path) {
    try (InputStream in = GoldenMessagesTest.class.getResourceAsStream(path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

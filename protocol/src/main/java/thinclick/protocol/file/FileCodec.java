package thinclick.protocol.file;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Reads and writes takes, drills, lessons and seasons as JSON, strictly. */
public final class FileCodec {
  private static final long MAX_CHARACTERS = 64L << 20;
  private static final JsonMapper MAPPER = StrictJson.mapper(true, MAX_CHARACTERS);
  private static final JsonMapper PRETTY =
      MAPPER.rebuild().enable(SerializationFeature.INDENT_OUTPUT).build();

  /** A year of a large class with every attack is some 50 MB. */
  private static final long MAX_SEASON = 256L << 20;

  private static final JsonMapper SEASONS = StrictJson.mapper(true, MAX_SEASON);

  private FileCodec() {}

  /** Reads a take. */
  public static Take readTake(byte[] json) {
    return read(MAPPER, MAX_CHARACTERS, json, Take.class, Take.FORMAT, Take.VERSION);
  }

  /** Reads a drill. */
  public static Drill readDrill(byte[] json) {
    return read(MAPPER, MAX_CHARACTERS, json, Drill.class, Drill.FORMAT, Drill.VERSION);
  }

  /** Reads a lesson. */
  public static Lesson readLesson(byte[] json) {
    return read(MAPPER, MAX_CHARACTERS, json, Lesson.class, Lesson.FORMAT, Lesson.VERSION);
  }

  /** Reads a season. */
  public static SeasonFile readSeason(byte[] json) {
    return read(SEASONS, MAX_SEASON, json, SeasonFile.class, SeasonFile.FORMAT, SeasonFile.VERSION);
  }

  /** Writes a season: compact, each member and each take on a line of its own. */
  public static byte[] writeSeason(SeasonFile season) {
    String json = MAPPER.writeValueAsString(season);
    String lines =
        json.replace("{\"id\":", "\n{\"id\":").replace("\"members\":[", "\n\"members\":[");
    return (lines + "\n").getBytes(StandardCharsets.UTF_8);
  }

  /**
   * What a file says it is, {@code "thinclick.take"} for one; empty where it says nothing. Meant
   * for choosing the reader, which then says what is wrong.
   */
  public static String formatOf(byte[] json) {
    try {
      JsonNode format = MAPPER.readTree(json).path("format");
      return format.isString() ? format.stringValue() : "";
    } catch (JacksonException notJson) {
      return "";
    }
  }

  /** Writes any of the three as indented JSON that ends with a line break. */
  public static byte[] write(Record file) {
    byte[] json = PRETTY.writeValueAsBytes(file);
    byte[] ended = Arrays.copyOf(json, json.length + 1);
    ended[json.length] = '\n';
    return ended;
  }

  private static <T> T read(
      JsonMapper mapper, long most, byte[] json, Class<T> type, String format, int version) {
    if (json.length == 0) {
      throw new BadInput("byte 0", "expected a " + format + " file, found an empty one");
    }
    if (json.length > most) {
      throw new BadInput("", "expected at most " + most + " bytes, found " + json.length);
    }
    JsonNode tree = parsed(mapper, json, parser -> mapper.readTree(parser));
    checkHead(tree, format, version);
    return parsed(mapper, json, parser -> mapper.readValue(parser, type));
  }

  private static <T> T parsed(JsonMapper mapper, byte[] json, Function<JsonParser, T> reading) {
    try (JsonParser parser = mapper.createParser(json)) {
      try {
        return reading.apply(parser);
      } catch (JacksonException problem) {
        throw StrictJson.explain(problem, parser.currentLocation());
      }
    }
  }

  /** Says a wrong or newer format before any field is looked at, since its fields may be others. */
  private static void checkHead(@Nullable JsonNode tree, String format, int version) {
    if (tree == null || !tree.isObject()) {
      throw new BadInput(
          "byte 0",
          "expected an object, found "
              + (tree == null ? "nothing" : tree.isArray() ? "a list" : tree.toString()));
    }
    JsonNode said = tree.get("format");
    if (said == null || !said.isString() || !said.stringValue().equals(format)) {
      throw new BadInput(
          "format",
          "expected \"" + format + "\", found " + (said == null ? "none" : said.toString()));
    }
    JsonNode number = tree.get("version");
    if (number == null || !number.isIntegralNumber()) {
      throw new BadInput(
          "version",
          "expected a whole number, found " + (number == null ? "none" : number.toString()));
    }
    if (!number.canConvertToLong() || number.asLong() > version) {
      throw new BadInput(
          "version",
          "expected at most "
              + version
              + ", found "
              + number
              + "; a newer Thinclick wrote this file");
    }
    if (number.asLong() < 1) {
      throw new BadInput("version", "expected at least 1, found " + number);
    }
  }
}

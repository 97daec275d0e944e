package thinclick.protocol.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.lang.reflect.Field;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.InputCoercionException;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.cfg.CoercionAction;
import tools.jackson.databind.cfg.CoercionInputShape;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.InvalidNullException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.type.LogicalType;

/**
 * JSON as this project takes it: nothing is coerced, no key twice, nothing after the end, bounded
 * in depth and size; every complaint becomes a {@link BadInput}.
 */
public final class StrictJson {
  private static final Pattern VALUE = Pattern.compile("value \\((?!token)(.*?)\\)");
  private static final Pattern TOKEN = Pattern.compile("token `JsonToken\\.(\\w+)`");

  private StrictJson() {}

  /**
   * A strict mapper.
   *
   * @param refuseUnknownFields true for files, false for messages, where later versions may say
   *     more
   * @param maxCharacters longest document
   */
  public static JsonMapper mapper(boolean refuseUnknownFields, long maxCharacters) {
    JsonFactory factory =
        JsonFactory.builder()
            .streamReadConstraints(
                StreamReadConstraints.builder()
                    .maxNestingDepth(16)
                    .maxNumberLength(20)
                    .maxStringLength(4_096)
                    .maxNameLength(128)
                    .maxDocumentLength(maxCharacters)
                    .build())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();
    return JsonMapper.builder(factory)
        .configure(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES, refuseUnknownFields)
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
        .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
        .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
        .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
        .withCoercionConfig(
            LogicalType.Textual,
            text ->
                text.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                    .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                    .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail))
        .withCoercionConfig(
            LogicalType.Enum,
            text -> text.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail))
        .build();
  }

  /** Says a Jackson complaint as one line: where, what was expected, what was found. */
  public static BadInput explain(JacksonException problem) {
    return explain(problem, null);
  }

  /**
   * As {@link #explain(JacksonException)}.
   *
   * @param reached where the parser stood, for complaints that do not know their place
   */
  public static BadInput explain(JacksonException problem, @Nullable TokenStreamLocation reached) {
    for (Throwable cause = problem.getCause(); cause != null; cause = cause.getCause()) {
      if (cause instanceof BadInput bad) {
        return bad.within(path(problem));
      }
    }
    return new BadInput(place(problem, reached), what(problem));
  }

  /**
   * A word that somebody typed where a value of another kind was wanted, said as a field of that
   * kind would be.
   *
   * @param where the option or argument, as it is written
   * @param type the kind that was wanted
   */
  public static BadInput mistyped(String where, Class<?> type, String typed) {
    return new BadInput(where, "expected " + kind(type) + ", found " + shown(typed));
  }

  private static String what(JacksonException problem) {
    if (problem instanceof UnrecognizedPropertyException unknown) {
      return "unknown field; expected one of "
          + String.join(
              ", ", unknown.getKnownPropertyIds().stream().map(Object::toString).sorted().toList());
    }
    if (problem instanceof InvalidNullException) {
      return "expected a value, found null";
    }
    if (problem instanceof InvalidFormatException format) {
      return "expected " + kind(format.getTargetType()) + ", found " + shown(format.getValue());
    }
    if (problem instanceof MismatchedInputException mismatch && mismatch.getTargetType() != null) {
      String said = mismatch.getOriginalMessage();
      if (said.startsWith("Missing required") || said.startsWith("Cannot map `null`")) {
        return "expected " + kind(mismatch.getTargetType()) + ", found none";
      }
      if (said.startsWith("Trailing token")) {
        return "expected the end, found more after it";
      }
      return "expected " + kind(mismatch.getTargetType()) + ", found " + found(said);
    }
    return NotJson.says(problem);
  }

  /** Jackson names the wrong value, or at least its token, inside its own sentence. */
  private static String found(String said) {
    Matcher value = VALUE.matcher(said);
    if (value.find()) {
      return value.group(1).replace('\'', '"');
    }
    Matcher token = TOKEN.matcher(said);
    if (!token.find()) {
      return "something else";
    }
    return switch (token.group(1)) {
      case "VALUE_STRING" -> "a text";
      case "VALUE_NUMBER_INT" -> "a whole number";
      case "VALUE_NUMBER_FLOAT" -> "a number with a fraction";
      case "VALUE_TRUE" -> "true";
      case "VALUE_FALSE" -> "false";
      case "VALUE_NULL" -> "null";
      case "START_ARRAY" -> "a list";
      case "START_OBJECT" -> "an object";
      default -> "something else";
    };
  }

  private static String kind(Class<?> type) {
    if (type == int.class || type == Integer.class || type == long.class || type == Long.class) {
      return "a whole number";
    }
    if (type == double.class || type == Double.class) {
      return "a number";
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true or false";
    }
    if (type == String.class) {
      return "a text";
    }
    if (List.class.isAssignableFrom(type)) {
      return "a list";
    }
    if (type.isEnum()) {
      return "one of " + String.join(", ", words(type));
    }
    return "an object";
  }

  /** The words an enum is written with. */
  private static List<String> words(Class<?> type) {
    return Arrays.stream(type.getFields())
        .filter(Field::isEnumConstant)
        .map(
            constant -> {
              JsonProperty word = constant.getAnnotation(JsonProperty.class);
              return word == null ? constant.getName() : word.value();
            })
        .toList();
  }

  private static String shown(Object value) {
    return value instanceof String text ? "\"" + text + "\"" : String.valueOf(value);
  }

  private static String place(JacksonException problem, @Nullable TokenStreamLocation reached) {
    String path = path(problem);
    TokenStreamLocation location = problem.getLocation() == null ? reached : problem.getLocation();
    boolean ofAValue =
        !(problem instanceof StreamReadException) || problem instanceof InputCoercionException;
    if (location == null || (ofAValue && !path.isEmpty())) {
      return path;
    }
    String at = at(location);
    return path.isEmpty() ? at : path + " (" + at + ")";
  }

  /** What an editor shows, both from 1; in the first line, which is all of a message, the byte. */
  private static String at(TokenStreamLocation location) {
    long first =
        location.getByteOffset() >= 0 ? location.getByteOffset() : location.getCharOffset();
    return location.getLineNr() > 1 || first < 0
        ? "line " + location.getLineNr() + ", column " + location.getColumnNr()
        : "byte " + first;
  }

  private static String path(JacksonException problem) {
    StringBuilder path = new StringBuilder();
    if (problem instanceof DatabindException || !problem.getPath().isEmpty()) {
      for (JacksonException.Reference step : problem.getPath()) {
        if (step.getPropertyName() != null) {
          path.append(path.isEmpty() ? "" : ".").append(step.getPropertyName());
        } else if (step.getIndex() >= 0) {
          path.append('[').append(step.getIndex()).append(']');
        }
      }
    }
    return path.toString();
  }
}

package thinclick.server.scoring;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes a record with {@link Figure}s as a flat JSON object and reads it again: the figure {@code
 * x} becomes itself, its interval and its reason. A field that an older review does not have reads
 * as unknown. Fields without a value are written as null; a reason or interval that is not there is
 * left out.
 */
final class Flat {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private Flat() {}

  static Map<String, @Nullable Object> write(Record value) {
    Map<String, @Nullable Object> object = new LinkedHashMap<>();
    Map<String, @Nullable Object> after = new LinkedHashMap<>();
    for (RecordComponent component : value.getClass().getRecordComponents()) {
      String name = component.getName();
      Object held = get(component, value);
      if (held instanceof Figure figure) {
        object.put(name, figure.value());
        if (figure.interval() != null) {
          after.put(name + "Interval", figure.interval());
        }
        if (figure.reason() != null) {
          after.put(name + "Reason", figure.reason());
        }
      } else {
        object.put(name, held);
      }
    }
    object.putAll(after);
    return object;
  }

  static <R extends Record> R read(Class<R> type, JsonNode node) {
    RecordComponent[] components = type.getRecordComponents();
    @Nullable Object[] values = new @Nullable Object[components.length];
    Class<?>[] types = new Class<?>[components.length];
    for (int i = 0; i < components.length; i++) {
      String name = components[i].getName();
      types[i] = components[i].getType();
      values[i] =
          types[i] == Figure.class
              ? figure(node, name)
              : convert(node.get(name), components[i].getGenericType());
    }
    try {
      Constructor<R> constructor = type.getDeclaredConstructor(types);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException impossible) {
      throw new IllegalStateException(type + " has no canonical constructor", impossible);
    }
  }

  private static Figure figure(JsonNode node, String name) {
    Double value = (Double) convert(node.get(name), Double.class);
    Interval interval = (Interval) convert(node.get(name + "Interval"), Interval.class);
    Reason reason = (Reason) convert(node.get(name + "Reason"), Reason.class);
    if (value == null && reason == null) {
      reason = new Reason(Reason.Code.NOT_RECORDED, "the review does not say");
    }
    return new Figure(value, interval, reason);
  }

  private static @Nullable Object convert(@Nullable JsonNode node, java.lang.reflect.Type type) {
    if (node == null || node.isNull()) {
      return type == boolean.class ? (Object) false : type == int.class ? (Object) 0 : null;
    }
    return MAPPER.convertValue(node, MAPPER.constructType(type));
  }

  private static @Nullable Object get(RecordComponent component, Record value) {
    try {
      return component.getAccessor().invoke(value);
    } catch (ReflectiveOperationException impossible) {
      throw new IllegalStateException(component + " cannot be read", impossible);
    }
  }
}

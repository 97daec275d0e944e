package thinclick.protocol.json;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Checks for the constructors of records that come from outside; each failure names its numbers.
 */
public final class Check {
  /** The largest whole number that every JSON reader keeps exactly, 2^53 - 1. */
  public static final long MAX_SAFE = (1L << 53) - 1;

  private Check() {}

  /** Refuses an absent value. */
  public static <T> T present(String field, @Nullable T value) {
    if (value == null) {
      throw new BadInput(field, "expected a value, found none");
    }
    return value;
  }

  /** Refuses a whole number outside {@code min..max}, both included. */
  public static void range(String field, long value, long min, long max) {
    if (value < min || value > max) {
      throw new BadInput(field, "expected " + min + " to " + max + ", found " + value);
    }
  }

  /** Refuses a number outside {@code min..max}, both included, and every NaN. */
  public static void range(String field, double value, double min, double max) {
    if (!(value >= min && value <= max)) {
      throw new BadInput(
          field, "expected " + number(min) + " to " + number(max) + ", found " + number(value));
    }
  }

  /** Refuses an optional whole number outside {@code min..max}. */
  public static void range(String field, @Nullable Integer value, int min, int max) {
    if (value != null) {
      range(field, value.longValue(), min, max);
    }
  }

  /** Refuses an optional number outside {@code min..max}. */
  public static void range(String field, @Nullable Double value, double min, double max) {
    if (value != null) {
      range(field, value.doubleValue(), min, max);
    }
  }

  /** Refuses a text of other than {@code min..max} code points. */
  public static void length(String field, String value, int min, int max) {
    int points = value.codePointCount(0, value.length());
    if (points < min || points > max) {
      throw new BadInput(field, "expected " + min + " to " + max + " characters, found " + points);
    }
  }

  /** Refuses a list of other than {@code min..max} elements. */
  public static void size(String field, Collection<?> values, int min, int max) {
    if (values.size() < min || values.size() > max) {
      throw new BadInput(
          field, "expected a list of " + min + " to " + max + ", found one of " + values.size());
    }
  }

  /** Refuses an absent list or a list with an absent element; answers an unmodifiable copy. */
  public static <T> List<T> list(String field, @Nullable List<? extends @Nullable T> values) {
    List<? extends @Nullable T> given = present(field, values);
    for (int i = 0; i < given.size(); i++) {
      if (given.get(i) == null) {
        throw new BadInput(field + "[" + i + "]", "expected a value, found none");
      }
    }
    @SuppressWarnings({"unchecked", "NullAway"}) // every element was just seen to be there
    List<T> copy = (List<T>) List.copyOf(given);
    return copy;
  }

  /** As {@link #list}, with an absent list taken as empty. */
  public static <T> List<T> listOrEmpty(
      String field, @Nullable List<? extends @Nullable T> values) {
    return values == null ? List.of() : list(field, values);
  }

  /** Refuses a list with a whole number outside {@code min..max}, both included. */
  public static void eachInRange(String field, List<Integer> values, int min, int max) {
    for (int i = 0; i < values.size(); i++) {
      inRange(field, i, values.get(i), min, max);
    }
  }

  /** The place is put into words where it is wrong only: lists are long, and most are right. */
  private static void inRange(String field, int index, int value, int min, int max) {
    if (value < min || value > max) {
      range(field + "[" + index + "]", value, (long) min, max);
    }
  }

  /** Refuses steps that are outside {@code min..max} or not strictly ascending. */
  public static void ascending(String field, List<Integer> steps, int min, int max) {
    int last = Integer.MIN_VALUE;
    for (int i = 0; i < steps.size(); i++) {
      int step = steps.get(i);
      inRange(field, i, step, min, max);
      if (step <= last) {
        throw new BadInput(
            field + "[" + i + "]",
            "expected more than " + last + ", the one before, found " + step);
      }
      last = step;
    }
  }

  /** A number as a person writes it: {@code 120}, not {@code 120.0}. */
  public static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}

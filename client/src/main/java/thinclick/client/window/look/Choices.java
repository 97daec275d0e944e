package thinclick.client.window.look;

import java.util.function.Function;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** How what can be chosen in a list is said. */
public final class Choices {
  private Choices() {}

  /** Says each choice by those words, and nothing where none is made. */
  public static <T> StringConverter<T> said(Function<T, String> words) {
    return new StringConverter<>() {
      @Override
      public String toString(@Nullable T value) {
        return value == null ? "" : words.apply(value);
      }

      @Override
      public @Nullable T fromString(String written) {
        return null; // nothing is written into a choice
      }
    };
  }
}

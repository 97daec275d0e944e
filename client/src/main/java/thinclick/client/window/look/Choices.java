package thinclick.client.window.look;

import java.util.function.BooleanSupplier;
import java.util.function.Function;
import javafx.scene.control.RadioButton;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** How what can be chosen is said, and when it counts as chosen. */
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

  /**
   * Does what belongs to an option, by its action and by the arrow keys, which choose without one.
   *
   * @param set whether it is set already, so that the button only follows
   */
  public static void onChosen(RadioButton option, BooleanSupplier set, Runnable does) {
    option.setOnAction(done -> does.run());
    option
        .selectedProperty()
        .addListener(
            (any, was, is) -> {
              if (is && !set.getAsBoolean()) {
                does.run();
              }
            });
  }
}

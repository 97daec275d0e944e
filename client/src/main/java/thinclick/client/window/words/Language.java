package thinclick.client.window.words;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The language that the window is to speak. */
public enum Language {
  /** As the system has it; English where the system's language is none of these. */
  SYSTEM(null),
  EN(Locale.ENGLISH),
  DE(Locale.GERMANY);

  private final @Nullable Locale own;

  Language(@Nullable Locale own) {
    this.own = own;
  }

  /**
   * The locale to speak in.
   *
   * @param system the system's own; where it speaks the wanted language, its country's rules for
   *     numbers and dates are kept
   */
  public Locale locale(Locale system) {
    Locale wanted = own;
    return wanted == null || wanted.getLanguage().equals(system.getLanguage()) ? system : wanted;
  }
}

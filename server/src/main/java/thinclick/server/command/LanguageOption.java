package thinclick.server.command;

import java.util.Locale;
import picocli.CommandLine.Option;
import thinclick.protocol.json.BadInput;
import thinclick.server.words.Speaker;

/** In which language something is said. */
final class LanguageOption {
  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      defaultValue = "en",
      description = "Say it in this language: en or de (default: ${DEFAULT-VALUE}).")
  private String language = "en";

  /** The speaker of the language. */
  Speaker speaker() {
    return Speaker.of(locale());
  }

  /** The language. */
  Locale locale() {
    String asked = language.strip().toLowerCase(Locale.ROOT);
    if (!Speaker.LANGUAGES.contains(asked)) {
      throw new BadInput(
          "--language",
          "expected " + String.join(" or ", Speaker.LANGUAGES) + ", found \"" + language + "\"");
    }
    return Locale.forLanguageTag(asked);
  }
}

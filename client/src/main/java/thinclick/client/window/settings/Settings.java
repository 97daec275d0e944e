package thinclick.client.window.settings;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Look;
import thinclick.client.window.words.Language;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * What is remembered: how the window looks, who played where. No more than a nickname is kept.
 *
 * @param version the version of this file
 * @param look how the window looks
 * @param language what the window speaks; absent in files of before there were two languages
 * @param name the nickname last used; empty for none
 * @param address the address last used; empty for none
 */
@JsonPropertyOrder({"format", "version"})
public record Settings(
    String format,
    int version,
    Look look,
    @Nullable Language language,
    String name,
    String address) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.settings";

  /** The version this code writes and the only one it reads. */
  public static final int VERSION = 1;

  /** Where nothing is remembered. */
  public static final Settings FIRST =
      new Settings(FORMAT, VERSION, Look.FIRST, Language.SYSTEM, "", "");

  public Settings {
    if (!FORMAT.equals(format)) {
      throw new BadInput("format", "expected \"" + FORMAT + "\", found \"" + format + "\"");
    }
    if (version != VERSION) {
      throw new BadInput("version", "expected " + VERSION + ", found " + version);
    }
    Check.present("look", look);
    Check.length("name", Check.present("name", name), 0, 128);
    Check.length("address", Check.present("address", address), 0, 256);
  }

  /** What the window speaks. */
  public Language speaks() {
    return language == null ? Language.SYSTEM : language;
  }
}

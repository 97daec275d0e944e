package thinclick.client.window.words;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ErrorCode;

/**
 * What a host or a line would not do, as it was said on the wire.
 *
 * @param code the documented code; null where none came
 * @param says the English of it; empty where all went well
 */
public record Refused(@Nullable ErrorCode code, String says) {
  /** Nothing was refused. */
  public static final Refused NOTHING = new Refused(null, "");

  public boolean isEmpty() {
    return says.isEmpty();
  }
}

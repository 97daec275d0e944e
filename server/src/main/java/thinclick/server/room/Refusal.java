package thinclick.server.room;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ErrorCode;

/** A message that cannot be followed; becomes an {@code error} to its sender, and nothing else. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final ErrorCode code;
  private final @Nullable String field;

  Refusal(ErrorCode code, @Nullable String field, String says) {
    super(says, null, false, false);
    this.code = code;
    this.field = field;
  }

  /** A value that was refused where it is declared. */
  static Refusal of(BadInput bad) {
    return new Refusal(ErrorCode.BAD_FIELD, bad.where(), bad.says());
  }

  ErrorCode code() {
    return code;
  }

  @Nullable String field() {
    return field;
  }

  String says() {
    return String.valueOf(getMessage());
  }
}

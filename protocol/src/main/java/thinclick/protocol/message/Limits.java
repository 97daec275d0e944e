package thinclick.protocol.message;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/** Limits that several messages share. */
final class Limits {
  private Limits() {}

  static void versions(int min, int max) {
    Check.range("versionMin", min, 1L, 1_000);
    Check.range("versionMax", max, (long) min, 1_000);
  }

  static void request(long requestId) {
    Check.range("requestId", requestId, 0L, Check.MAX_SAFE);
  }

  static void revision(long revision) {
    Check.range("revision", revision, 0L, Check.MAX_SAFE);
  }

  static void text(String field, @Nullable String value, int max) {
    if (value != null) {
      Check.length(field, value, 1, max);
    }
  }

  static void id(String field, @Nullable String value) {
    String id = Check.present(field, value);
    Check.length(field, id, 1, 32);
    for (int i = 0; i < id.length(); i++) {
      char c = id.charAt(i);
      if (c <= ' ' || c > '~') {
        throw new BadInput(field, "expected printable ASCII, found a character " + (int) c);
      }
    }
  }
}

package thinclick.server.dealing;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** How much each role counts in the ensemble pulse; our own choice. */
final class Roles {
  private Roles() {}

  /** The weight of a role, 1 where it is not known. */
  static double weight(@Nullable String role) {
    if (role == null) {
      return 1;
    }
    return switch (role.toLowerCase(Locale.ROOT)) {
      case "ride", "bass", "timeline", "clave", "timekeeper" -> 2;
      case "answer", "answers", "horn" -> 0.5;
      default -> 1;
    };
  }
}

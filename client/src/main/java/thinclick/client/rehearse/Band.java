package thinclick.client.rehearse;

import java.util.List;
import thinclick.protocol.json.Check;

/** The invented players of the demo band room; stand-ins go by their names. */
public final class Band {
  private static final List<String> NAMES =
      List.of(
          "Mina", "Jonas", "Ilse", "Tariq", "Noor", "Pavel", "Greta", "Sami", "Lotte", "Emre",
          "Runa", "Dario", "Wanda", "Tove", "Milo", "Anouk", "Kofi", "Selma", "Bruno", "Yara",
          "Nils", "Petra", "Omar", "Finja");

  private Band() {}

  /** The first {@code count} of them, 1 to 24. */
  public static List<String> of(int count) {
    Check.range("--players", count, 1L, NAMES.size());
    return NAMES.subList(0, count);
  }

  /** The first {@code count} of them, 1 to 23, that are not called {@code taken}. */
  public static List<String> without(String taken, int count) {
    Check.range("players", count, 0L, NAMES.size() - 1L);
    return NAMES.stream()
        .filter(name -> !name.equalsIgnoreCase(taken.strip()))
        .limit(count)
        .toList();
  }
}

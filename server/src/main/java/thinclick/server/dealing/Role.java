package thinclick.server.dealing;

import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a chair does for the whole; weights and densities are our own choice.
 *
 * <p>Ride and bass lock together, so that their coincidences are wanted. The timeline never adapts,
 * the shaker subdivides, comping fills what the others leave, horns answer: few coincidences are
 * asked for among comping, answers and timeline only.
 */
enum Role {
  /** A figure that stands and never adapts. */
  TIMELINE("timeline", 2, "claves", 0, 0, false, "clave"),
  /** The beats, at the bottom. */
  BASS("bass", 2, "bass", 0, 0, false),
  /** The beats and what leads into them. */
  RIDE("ride", 2, "ride", 0, 0, false, "timekeeper", "hi-hat"),
  /** Fills what the others leave. */
  COMPING("comping", 1, "piano", 0.15, 0.3, true),
  /** Answers in the second half of the period. */
  ANSWER("answer", 0.5, "trumpet", 0.1, 0.2, true, "answers", "horn", "horns", "horn answers"),
  /** Every step. */
  SHAKER("shaker", 1, "shaker", 0, 0, false),
  /** Whatever else there is. */
  OTHER("other", 1, "clapping", 0.12, 0.25, true);

  /** Among these three coincidences are unwanted. */
  static final Set<Role> KEEP_APART = Set.of(TIMELINE, COMPING, ANSWER, OTHER);

  private final String word;
  private final double weight;
  private final String instrument;
  private final double leastDensity;
  private final double mostDensity;
  private final boolean adapts;

  /** Other words for it, between bars. */
  private final String also;

  Role(
      String word,
      double weight,
      String instrument,
      double leastDensity,
      double mostDensity,
      boolean adapts,
      String... also) {
    this.word = word;
    this.weight = weight;
    this.instrument = instrument;
    this.leastDensity = leastDensity;
    this.mostDensity = mostDensity;
    this.adapts = adapts;
    this.also = "|" + String.join("|", also) + "|";
  }

  /** The role of a word; OTHER for a word that is not known. */
  static Role of(@Nullable String word) {
    if (word != null) {
      String lower = word.toLowerCase(Locale.ROOT);
      for (Role role : values()) {
        if (role.word.equals(lower) || role.also.contains("|" + lower + "|")) {
          return role;
        }
      }
    }
    return OTHER;
  }

  String word() {
    return word;
  }

  /** How much it counts in the ensemble pulse. */
  double weight() {
    return weight;
  }

  /** What it is read on where the drill does not say. */
  String instrument() {
    return instrument;
  }

  /** True where its figure is sought so that it fits the others. */
  boolean adapts() {
    return adapts;
  }

  /** The share of the steps that it attacks, for a level from 1 to 10. */
  double density(int level) {
    return leastDensity + (mostDensity - leastDensity) * (level - 1) / 9;
  }
}

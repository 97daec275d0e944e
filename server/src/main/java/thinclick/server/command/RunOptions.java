package thinclick.server.command;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Swing;
import thinclick.server.material.ChairWishes;
import thinclick.server.material.ClickPlans;
import thinclick.server.material.Composition;

/**
 * The options of {@code compose} that say how a figure is dealt, how fast, and under which click.
 */
final class RunOptions {
  @Option(
      names = "--deal",
      paramLabel = "WAY",
      description = "How it is shared out; --list deals names the ways.")
  private @Nullable String deal;

  @Option(names = "--seed", paramLabel = "N", description = "Settles every free choice.")
  private @Nullable Long seed;

  @Option(names = "--tempo", paramLabel = "BPM", description = "Beats a minute, 30 to 320.")
  private @Nullable Double tempo;

  @Option(
      names = "--swing",
      paramLabel = "RATIO|band",
      description = "Long to short, 1 to 4, or as the band plays it.")
  private @Nullable String swing;

  @Option(
      names = "--plan",
      paramLabel = "PLAN",
      description =
          "The click: \"first only\", \"all beats to every second bar\", several with commas;"
              + " --list plans names them.")
  private @Nullable String plan;

  @Option(names = "--stage-bars", paramLabel = "N", description = "Bars of each stage.")
  private @Nullable Integer stageBars;

  @Option(
      names = "--feel",
      paramLabel = "\"ROLE MS\"",
      description =
          "A lean asked for on purpose, late positive: \"comping 25\", \"ride 0 -10\" on the"
              + " beats and off them; several with commas, without a role for all.")
  private @Nullable String feel;

  @Option(
      names = "--free",
      paramLabel = "\"ROLE BARS\"",
      description = "Bars played freely: \"comping 5-8 of 8\"; several with commas.")
  private @Nullable String free;

  /** Sets what is asked for. */
  void in(Composition made) {
    if (deal != null) {
      String wanted = deal;
      Typed.of(() -> made.deal(way(wanted)), "--deal");
    }
    if (feel != null) {
      String wanted = feel;
      made.chairs(had -> ChairWishes.feel("--feel", had, wanted));
    }
    if (free != null) {
      String bars = free;
      made.chairs(had -> ChairWishes.free("--free", had, bars));
    }
    if (seed != null) {
      long wanted = seed;
      Typed.of(() -> made.seed(wanted), "--seed");
    }
    if (tempo != null) {
      double wanted = tempo;
      Typed.of(() -> made.tempo(wanted), "--tempo");
    }
    if (swing != null) {
      String wanted = swing;
      Typed.of(() -> made.swing(ratio(wanted)), "--swing");
    }
    if (plan != null) {
      String wanted = plan;
      Typed.of(
          () -> made.plan(ClickPlans.parse("--plan", wanted, made.meter(), made.groups())),
          "--plan");
    }
    if (stageBars != null) {
      int wanted = stageBars;
      Typed.of(() -> made.stageBars(wanted), "--stage-bars");
    }
  }

  private static Swing ratio(String written) {
    if ("band".equals(written.strip())) {
      return Swing.BAND;
    }
    try {
      return Swing.of(Double.parseDouble(written.strip()));
    } catch (NumberFormatException notANumber) {
      throw new BadInput(
          "--swing", "expected a ratio from 1 to 4 or band, found \"" + written + "\"");
    }
  }

  private static DealKind way(String written) {
    return Typed.word("--deal", written, ways());
  }

  /** The ways of dealing by the words they are asked for with. */
  static Map<String, DealKind> ways() {
    return Arrays.stream(DealKind.values())
        .collect(
            Collectors.toMap(
                kind -> kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                Function.identity(),
                (one, other) -> one,
                LinkedHashMap::new));
  }
}

package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.FreeReview;
import thinclick.server.scoring.Response;
import thinclick.server.scoring.StageReview;

/**
 * Call and answer, and what was played freely: an answer is held against its call as it was played,
 * a free stretch by how the player came back and by whether the pulse held through it.
 */
final class FreeRules {
  /** So many who came home are named; more are counted. */
  private static final int MOST_NAMES = 4;

  private FreeRules() {}

  /**
   * "After free bars 5 to 8, Jonas came back in bar 9, a beat late ..." Those who came home are
   * named together.
   */
  static List<Finding> comingBack(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      for (FreeReview one : of(evidence, player)) {
        Said lost = one.returnBar() == null ? null : lost(evidence, one, one.returnBar() + 1);
        if (lost != null) {
          boolean placed = one.returnSteps() != null && one.returnSteps() != 0;
          findings.add(
              new Finding(
                  "free",
                  Matter.EDGES,
                  player.name(),
                  one.toBar() - one.fromBar(),
                  lost,
                  placed ? Advice.COUNT_ALOUD : Advice.PUSH_ONLY));
        }
      }
    }
    findings.addAll(home(evidence));
    return findings;
  }

  /** "Ilse came home after free bars 5 to 8." "Jonas and Ilse came home after ..." */
  private static List<Finding> home(Evidence evidence) {
    List<FreeReview> home = cameHome(evidence);
    List<Object> names = home.stream().<Object>map(FreeReview::player).distinct().toList();
    if (names.isEmpty()) {
      return List.of();
    }
    boolean held = heldForAll(evidence);
    double size = 40.0 + home.size();
    if (names.size() == 1) {
      String name = home.get(0).player();
      Said says =
          Said.of(
              held ? "free.homeAndHeld" : "free.home",
              name,
              home.size(),
              Speaker.number(home.size()),
              home.get(0).fromBar() + 1,
              home.get(0).toBar());
      return List.of(new Finding("free", Matter.GOOD, name, size, says, null));
    }
    long free = evidence.players.stream().filter(player -> !of(evidence, player).isEmpty()).count();
    Object who =
        names.size() <= MOST_NAMES
            ? new Said.Row(names, true)
            : names.size() == free
                ? Said.of("free.everybody")
                : Said.of("free.some", names.size(), (int) free);
    Said says = Said.of(held ? "free.bandHomeAndHeld" : "free.bandHome", who);
    return List.of(Finding.ofBand("free", Matter.GOOD, size, says, null));
  }

  private static List<FreeReview> cameHome(Evidence evidence) {
    return evidence.players.stream()
        .flatMap(player -> of(evidence, player).stream())
        .filter(FreeReview::cameHome)
        .toList();
  }

  /**
   * True where the pulse held through each stretch that somebody came home from, and not by the
   * click alone.
   */
  private static boolean heldForAll(Evidence evidence) {
    List<FreeReview> home = cameHome(evidence);
    return home.stream().allMatch(one -> held(evidence, one) || clicked(evidence, one))
        && home.stream().anyMatch(one -> held(evidence, one));
  }

  /** Why a return was none; null where it was one, or where no pulse tells. */
  private static @Nullable Said lost(Evidence evidence, FreeReview one, int bar) {
    int from = one.fromBar() + 1;
    if (one.returnSteps() == null) {
      return Said.of("free.notBack", one.player(), from, one.toBar(), bar);
    }
    if (one.returnSteps() != 0) {
      Said shift = ShiftWords.of(one.returnSteps(), evidence.meter(), evidence.stepsPerBeat());
      Displacement off = begunAt(evidence, one);
      Said until =
          off == null
              ? shift
              : off.toBar() >= evidence.bars()
                  ? Said.of("free.toTheEnd", shift)
                  : Said.of("free.untilHome", shift, off.toBar() + 1);
      return Said.of("free.shifted", one.player(), from, one.toBar(), bar, until);
    }
    Figure off = one.returnMillis();
    return Boolean.FALSE.equals(one.onPulse()) && off.known()
        ? Said.of(
            "free.off",
            one.player(),
            from,
            one.toBar(),
            bar,
            Said.of(off.get() < 0 ? "lean.early" : "lean.late", Quantity.millis(off).size()))
        : null;
  }

  /** The stretch off the part that a return to a wrong place began; null where none is known. */
  private static @Nullable Displacement begunAt(Evidence evidence, FreeReview one) {
    return evidence.players.stream()
        .filter(player -> player.name().equals(one.player()))
        .flatMap(player -> evidence.displacements(player).stream())
        .filter(off -> begins(one, off))
        .findFirst()
        .orElse(null);
  }

  private static boolean begins(FreeReview one, Displacement off) {
    return one.returnBar() != null
        && one.returnSteps() != null
        && one.returnBar() == off.fromBar()
        && one.returnSteps() == off.steps();
  }

  /** True where all that a player was off the part is told with the return from a free stretch. */
  static boolean saysAll(Evidence evidence, Chairful player, List<Displacement> episodes) {
    return episodes.stream()
        .allMatch(off -> of(evidence, player).stream().anyMatch(one -> begins(one, off)));
  }

  /** "The pulse held through Ilse's free bars 5 to 8." "The pulse dragged 2 % through ..." */
  static List<Finding> pulse(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    boolean saidOfAll = heldForAll(evidence);
    for (Chairful player : evidence.players) {
      for (FreeReview one : of(evidence, player)) {
        boolean held = held(evidence, one);
        boolean said = saidOfAll && one.cameHome();
        if (!one.driftPercent().known() || clicked(evidence, one) || said) {
          continue;
        }
        boolean moved = !held;
        boolean dragged = one.driftPercent().get() > 0;
        String key = !moved ? "free.pulseHeld" : dragged ? "free.pulseDragged" : "free.pulseRushed";
        findings.add(
            Finding.ofBand(
                "freePulse",
                moved ? Matter.TIME : Matter.GOOD,
                moved ? Math.abs(one.driftPercent().get()) : 10,
                Said.of(
                    key,
                    one.player(),
                    one.fromBar() + 1,
                    one.toBar(),
                    Quantity.drift(one.driftPercent()).size()),
                moved ? (dragged ? Advice.SING : Advice.ISLANDS) : null));
      }
    }
    return findings;
  }

  /** True where the others held the pulse through a free stretch without a click on every beat. */
  private static boolean held(Evidence evidence, FreeReview one) {
    return one.driftPercent().known()
        && !clicked(evidence, one)
        && !DriftWords.matters(one.driftPercent());
  }

  /** True where every beat of a free stretch clicked, so that nobody had to hold the pulse. */
  private static boolean clicked(Evidence evidence, FreeReview one) {
    List<StageReview> stages = evidence.review().stages();
    for (int i = 0; i < stages.size(); i++) {
      boolean touches =
          stages.get(i).fromBar() < one.toBar() && stages.get(i).toBar() > one.fromBar();
      if (touches && !evidence.heldByTheClick(i)) {
        return false;
      }
    }
    return true;
  }

  /** "Tariq gave back 22 of the 24 notes that were called, 8 ms late." */
  static List<Finding> answers(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Chairful player : evidence.players) {
      int called = 0;
      int answered = 0;
      int extra = 0;
      double later = 0;
      for (Response one : evidence.review().responses()) {
        if (one.player().equals(player.name())) {
          called += one.called();
          answered += one.answered();
          extra += one.extra();
          later += one.laterMillis() == null ? 0 : one.answered() * one.laterMillis();
        }
      }
      if (called >= Outcome.FEWEST_ATTACKS && answered > 0) {
        double mean = later / answered;
        boolean well = answered >= WELL * called && extra <= (1 - WELL) * called;
        Said where =
            Math.abs(mean) < NOTICED_MILLIS
                ? Said.of("answer.inTime")
                : Said.of(
                    mean < 0 ? "lean.early" : "lean.late", Quantity.millis(Math.abs(mean), null));
        findings.add(
            new Finding(
                "answers",
                well ? Matter.GOOD : Matter.NOTES,
                player.name(),
                well ? 30 : 1 - (double) answered / called,
                Said.of(
                    extra == 0 ? "answer.back" : "answer.backAndMore",
                    player.name(),
                    answered,
                    called,
                    where,
                    extra),
                null));
      }
    }
    return findings;
  }

  /**
   * An answer that gives back so much of its call, and adds no more than the rest, is a good one.
   */
  private static final double WELL = 0.9;

  /** Under so many ms nobody hears an answer as early or late; that of {@link LeanRules}. */
  private static final double NOTICED_MILLIS = 6;

  private static List<FreeReview> of(Evidence evidence, Chairful player) {
    return evidence.review().free().stream()
        .filter(one -> one.player().equals(player.name()))
        .toList();
  }
}

package thinclick.server.words;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.StageReview;

/**
 * What there is to say about a take: to the band in three to six sentences, and to each player on a
 * slip of their own.
 */
public final class ReviewWords {
  private static final int MOST_TROUBLES = 3;
  private static final int MOST_SENTENCES = 6;
  private static final double A_QUARTER = 0.25;
  private static final double HELD_SHARE = StageReview.HELD_PERCENT / 100;

  /** What concerns the band's next try before the hold does. */
  private static final Set<Matter> FIRST = EnumSet.of(Matter.PLACE, Matter.EDGES, Matter.TIME);

  private final Evidence evidence;
  private final List<Finding> findings;
  private final NextTry next;

  private ReviewWords(Evidence evidence, List<Finding> findings, List<Outcome> before) {
    this.evidence = evidence;
    this.findings = findings;
    List<Outcome> outcomes = new ArrayList<>(before);
    outcomes.add(Outcome.of(evidence.review()));
    Finding verdict = findings.stream().filter(ReviewWords::isVerdict).findFirst().orElse(null);
    Advice noVerdict = verdict == null ? null : verdict.next();
    next =
        NextTry.after(
            outcomes,
            evidence.nobodyHeard()
                ? Advice.CHECK_THE_SOUND
                : mendedFirst(findings, standIns(evidence), people(evidence)),
            noVerdict == null ? Advice.SAME_AGAIN : noVerdict);
  }

  /** All that the rules find in a take that stands for itself. */
  public static ReviewWords of(Analysis analysis) {
    return of(analysis, List.of());
  }

  /**
   * All that the rules find in a take.
   *
   * @param before the outcomes of the takes before it at the same drill, tempo and click plan, the
   *     oldest first: the next rung wants two
   */
  public static ReviewWords of(Analysis analysis, List<Outcome> before) {
    Evidence evidence = Evidence.of(analysis);
    return new ReviewWords(evidence, Rules.apply(evidence), before);
  }

  /**
   * What has to be mended before the click changes. One of a class who is lost gets advice of their
   * own; the class goes on unless a quarter of it is. A stand-in's slips are made on purpose, and
   * no machine can count aloud: they ask nothing of the band.
   */
  private static @Nullable Advice mendedFirst(
      List<Finding> findings, Set<String> standIns, long people) {
    List<Finding> first =
        findings.stream()
            .filter(one -> one.player() == null || !standIns.contains(one.player()))
            .filter(one -> FIRST.contains(one.matter()) && one.next() != null)
            .toList();
    long whose = first.stream().map(Finding::player).filter(Objects::nonNull).distinct().count();
    boolean many = whose >= A_QUARTER * people;
    return first.stream()
        .filter(one -> one.player() == null || many)
        .map(Finding::next)
        .findFirst()
        .orElse(null);
  }

  private static Set<String> standIns(Evidence evidence) {
    return evidence.players.stream()
        .filter(one -> one.review.standIn())
        .map(Chairful::name)
        .collect(Collectors.toSet());
  }

  private static long people(Evidence evidence) {
    return evidence.players.stream().filter(one -> !one.review.standIn()).count();
  }

  /** Every finding, what matters most first. */
  public List<Finding> findings() {
    return findings;
  }

  /** What is said to all, before what comes next: two to five findings. */
  public List<Finding> band() {
    List<Finding> said = new ArrayList<>();
    if (evidence.nobodyHeard()) {
      add(said, ReviewWords::isVerdict, 1);
      add(said, one -> one.matter() == Matter.CAVEAT && !one.rule().equals("standIns"), 2);
      return List.copyOf(said);
    }
    add(said, finding -> finding.rule().equals(PlaceRules.OTHER_PART), 1);
    add(said, ReviewWords::isVerdict, 1);
    add(said, finding -> isTrouble(finding.matter()), MOST_TROUBLES);
    add(said, finding -> finding.rule().equals("thinnest") && finding.size() >= 1, 1);
    add(said, finding -> finding.matter() == Matter.CAVEAT, 2);
    add(said, finding -> finding.matter() == Matter.AHEAD, 1);
    add(said, finding -> finding.matter() == Matter.GOOD, 1);
    add(said, finding -> finding.rule().equals("thinnest"), 1);
    return List.copyOf(said.subList(0, Math.min(said.size(), MOST_SENTENCES - 1)));
  }

  private void add(List<Finding> said, Predicate<Finding> which, int most) {
    findings.stream()
        .filter(finding -> !finding.slipOnly() && which.test(finding) && !said.contains(finding))
        .limit(most)
        .forEach(said::add);
  }

  private static boolean isVerdict(Finding finding) {
    return finding.rule().equals("together");
  }

  private static boolean isTrouble(Matter matter) {
    return switch (matter) {
      case PLACE, EDGES, TIME, NOTES, LEAN, SPREAD, FOLLOWING -> true;
      case VERDICT, AHEAD, GOOD, CAVEAT -> false;
    };
  }

  /** What the band does next, and what becomes of the click. */
  public NextTry next() {
    return next;
  }

  /** What the band does next. */
  public Advice nextForTheBand() {
    return next.advice();
  }

  /**
   * What one player does next by themselves; null where nothing of their own is to be mended. No
   * machine practises.
   */
  public @Nullable Advice nextFor(String player) {
    if (standIns(evidence).contains(player)) {
      return null;
    }
    for (Finding finding : findings) {
      if (player.equals(finding.player()) && finding.next() != null) {
        return finding.next();
      }
    }
    return null;
  }

  /** The names of the rules that found something about a player. */
  List<String> rulesOf(String player) {
    return findings.stream()
        .filter(finding -> player.equals(finding.player()))
        .map(Finding::rule)
        .distinct()
        .toList();
  }

  /** The sentences for one player alone; nothing of anybody else's figures is in them. */
  public List<Said> slip(String player) {
    Chairful own =
        evidence.players.stream()
            .filter(one -> one.name().equals(player))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("nobody is called " + player));
    if (evidence.nobodyHeard() && own.silent()) {
      Said verdict =
          findings.stream().filter(ReviewWords::isVerdict).findFirst().orElseThrow().says();
      return List.of(verdict, nextOn(player, own));
    }
    List<Said> sentences = new ArrayList<>();
    if (!own.silent() && !evidence.playsAnotherPart(own)) {
      sentences.add(
          own.review.spreadMillis().known()
              ? Said.of(
                  "slip.placed",
                  own.review.placed(),
                  own.review.written(),
                  Quantity.millis(own.review.spreadMillis()))
              : Said.of("slip.placedOnly", own.review.placed(), own.review.written()));
    }
    findings.stream()
        .filter(finding -> player.equals(finding.player()) && finding.matter() != Matter.GOOD)
        .filter(finding -> !finding.rule().equals(LineRules.HEARING))
        .limit(MOST_SENTENCES - 2L)
        .map(finding -> ToOneself.of(finding.says()))
        .forEach(sentences::add);
    findings.stream()
        .filter(finding -> player.equals(finding.player()) && finding.rule().equals("feel"))
        .filter(finding -> finding.matter() == Matter.GOOD)
        .map(finding -> ToOneself.of(finding.says()))
        .forEach(sentences::add);
    // Whatever else there is to say: how a player heard the others bears on all of it.
    findings.stream()
        .filter(finding -> player.equals(finding.player()))
        .filter(finding -> finding.rule().equals(LineRules.HEARING))
        .map(Finding::says)
        .forEach(sentences::add);
    sentences.add(nextOn(player, own));
    return List.copyOf(sentences);
  }

  /** One sentence: what to mend by oneself, and what the band does, which is decided for all. */
  private Said nextOn(String player, Chairful own) {
    Advice alone = nextFor(player);
    Said band = nextForTheBand().said(evidence.take());
    if (evidence.players.size() == 1 || alone == nextForTheBand()) {
      return Said.of("next.band", band);
    }
    if (alone != null) {
      return Said.of("next.alone", alone.said(evidence.take()), band);
    }
    // Who is late on the whole has nothing to drill alone, but is not told that all was well.
    boolean held = own.review.placed() >= HELD_SHARE * own.review.written();
    return held && !own.silent() && !own.review.standIn()
        ? Said.of("next.withTheBand", band)
        : Said.of("next.band", band);
  }
}

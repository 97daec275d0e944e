package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Analysis.Kind;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.Review;

/** What rules look at: a take's figures, and what follows from them. */
final class Evidence {
  final Analysis analysis;
  final List<Chairful> players;
  final List<OtherPart> otherParts;

  private Evidence(Analysis analysis, List<Chairful> players, List<OtherPart> otherParts) {
    this.analysis = analysis;
    this.players = players;
    this.otherParts = otherParts;
  }

  static Evidence of(Analysis analysis) {
    int stepsPerBar = analysis.take().grid().stepsPerBar();
    List<Chairful> players = new ArrayList<>();
    for (int i = 0; i < analysis.players().size(); i++) {
      players.add(
          new Chairful(
              analysis.review().players().get(i),
              analysis.take().parts().get(i),
              analysis.players().get(i),
              stepsPerBar));
    }
    return new Evidence(
        analysis, List.copyOf(players), OtherPart.find(analysis, players, stepsPerBar));
  }

  Take take() {
    return analysis.take();
  }

  Review review() {
    return analysis.review();
  }

  Meter meter() {
    return take().meter();
  }

  int stepsPerBeat() {
    return take().stepsPerBeat();
  }

  int bars() {
    return take().plan().bars();
  }

  double beatMillis() {
    return take().grid().beatMicros() / 1_000;
  }

  /** True where nothing was heard from anybody whose playing a verdict hangs on. */
  boolean nobodyHeard() {
    return Outcome.nobodyHeard(review());
  }

  /** True where too little is written to judge anything. */
  boolean tooFew() {
    return Outcome.of(review()).tooFew();
  }

  Stage stage(int index) {
    return take().stages().get(index);
  }

  Said on(int stage) {
    return ClickWords.on(stage(stage), meter(), stepsPerBeat());
  }

  Said through(int stage) {
    return ClickWords.through(stage(stage), meter(), stepsPerBeat());
  }

  boolean silent(int stage) {
    return ClickWords.silent(stage(stage), meter(), stepsPerBeat());
  }

  /** True where the click sounds so often that the band cannot drift from it. */
  boolean heldByTheClick(int stage) {
    return review().stages().get(stage).heldByTheClick(meter());
  }

  boolean playsAnotherPart(Chairful player) {
    return otherParts.stream().anyMatch(one -> one.player() == player);
  }

  /** Displacements that no swapped sheet explains. */
  List<Displacement> displacements(Chairful player) {
    return player.review.displacements().stream()
        .filter(
            one ->
                otherParts.stream()
                    .noneMatch(
                        other ->
                            other.player() == player
                                && other.bars().overlaps(one.fromBar(), one.toBar())))
        .toList();
  }

  /** Dropped attacks that neither a late entry, a lost ending nor a swapped sheet explains. */
  int droppedElsewhere(Chairful player) {
    if (player.silent()) {
      return 0;
    }
    int first = player.droppedFirst();
    int last = player.droppedLast();
    List<Analysis.Written> counted =
        player.written.stream()
            .filter(one -> one.fate() != Fate.AWAY && one.fate() != Fate.AFTER_THE_STOP)
            .toList();
    return (int)
        counted.subList(first, counted.size() - last).stream()
            .filter(one -> one.fate() == Fate.DROPPED && !inAnotherPart(player, player.barOf(one)))
            .count();
  }

  /** Added attacks that no swapped sheet explains. */
  int addedElsewhere(Chairful player) {
    double barMicros = take().grid().beatMicros() * meter().beatsPerBar();
    return (int)
        player.played.stream()
            .filter(one -> one.kind() == Kind.ADDED)
            .filter(
                one -> {
                  long micros = take().attacks().get(one.attack()).micros();
                  double bar = (micros - take().startMicros()) / barMicros;
                  return !inAnotherPart(player, (int) Math.floor(bar));
                })
            .count();
  }

  private boolean inAnotherPart(Chairful player, int bar) {
    return otherParts.stream().anyMatch(one -> one.player() == player && one.bars().contains(bar));
  }
}

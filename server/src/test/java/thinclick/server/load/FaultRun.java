package thinclick.server.load;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * One take with one fault in it, and beside it a take of another room that must not notice. What
 * must hold is looked at throughout and at the end.
 */
final class FaultRun {
  private static final int PLAYERS = 3;

  private final Fault fault;
  private final Random random;
  private final FaultyHost host;
  private final List<FaultPlayer> players = new ArrayList<>();
  private final FaultPlayer bystander;
  private final List<String> broken = new ArrayList<>();

  private FaultRun(Fault fault, long seed, FaultyHost host) {
    this.fault = fault;
    this.random = new Random(seed);
    this.host = host;
    for (Orchestra.Seat seat : Orchestra.play(host.port(), PLAYERS)) {
      players.add(new FaultPlayer(seat, host::port));
    }
    bystander = new FaultPlayer(Orchestra.play(host.port(), 1).get(0), host::port);
  }

  /**
   * Runs it.
   *
   * @param library the disk that obeys, or null where none was built
   * @return what did not hold; empty where all did
   */
  static List<String> of(Fault fault, long seed, Path folder, @Nullable Path library) {
    FaultRun run;
    try (FaultyHost host = FaultyHost.start(fault, folder, library)) {
      run = new FaultRun(fault, seed, host);
      run.play();
    }
    run.checkStored();
    return run.broken;
  }

  /** The same at a host that goes on, in two rooms beside those of other runs. */
  static List<String> at(FaultyHost host, Fault fault, long seed) {
    FaultRun run = new FaultRun(fault, seed, host);
    run.play();
    run.checkStored();
    return run.broken;
  }

  private void play() {
    if (fault == Fault.CLOCK_JUMP) {
      host.jump(40); // past the announcement
    }
    allPlay();
    meet(fault == Fault.TWO_AT_ONCE ? anyOfTheLine() : fault);
    if (fault == Fault.TWO_AT_ONCE) {
      meet(anyOfTheLine());
    }
    allPlay();
    for (FaultPlayer player : players) {
      player.reading(true);
      player.finish(random, this::meanwhile);
    }
    if (!fault.ofTheProcess() && bystander.dead()) {
      broken.add("the other room's line was cut");
    }
    bystander.finish(random, this::meanwhile);
    acknowledgedIsStored();
    for (FaultPlayer player : all()) {
      player.wrong().forEach(broken::add);
      player.close();
    }
  }

  private List<FaultPlayer> all() {
    List<FaultPlayer> all = new ArrayList<>(players);
    all.add(bystander);
    return all;
  }

  private void allPlay() {
    for (FaultPlayer player : all()) {
      player.play(5 + random.nextInt(25), random);
    }
    meanwhile();
    acknowledgedIsStored();
  }

  private void meanwhile() {
    host.jump(25);
  }

  private Fault anyOfTheLine() {
    List<Fault> ofTheLine =
        List.of(
            Fault.CUT,
            Fault.HALF_OPEN,
            Fault.DUPLICATES,
            Fault.REORDERED,
            Fault.HOSTILE_TEXT,
            Fault.SLOW_READER);
    return ofTheLine.get(random.nextInt(ofTheLine.size()));
  }

  private void meet(Fault met) {
    FaultPlayer victim = players.get(random.nextInt(PLAYERS));
    switch (met) {
      case CUT -> {
        victim.cut();
        victim.play(1 + random.nextInt(20), random); // into the void
      }
      case HALF_OPEN -> {
        victim.forgetLine();
        victim.comeBack();
        victim.send(victim.acknowledged() + 1, victim.generated().size(), random);
      }
      case DUPLICATES -> {
        victim.send(1, victim.generated().size(), random);
        victim.send(1, victim.generated().size(), random);
      }
      case REORDERED -> {
        victim.cut();
        victim.comeBack();
        victim.sendBackwards(1, victim.generated().size());
      }
      case HOSTILE_TEXT -> hostile(victim);
      case SLOW_READER -> {
        victim.reading(false);
        players.forEach(player -> player.play(40, random));
      }
      case CLOCK_JUMP -> host.jump(1_000 + random.nextInt(20_000));
      case KILL -> host.killAndRestart();
      case KILL_AFTER_COMMIT -> {
        host.flag("kill", true);
        players.forEach(player -> player.play(10, random));
        await(() -> !host.alive());
        host.flag("kill", false);
        acknowledgedIsStored();
        host.killAndRestart();
      }
      case FULL_DISK -> {
        host.full(true);
        starve();
        host.full(false);
      }
      case FAILING_SYNC -> {
        host.flag("fail", true);
        starve();
        host.flag("fail", false);
      }
      case TWO_AT_ONCE -> throw new IllegalStateException("chosen before");
    }
    acknowledgedIsStored();
  }

  /** Plays until the room is told that the disk cannot be written. */
  private void starve() {
    await(
        () -> {
          players.forEach(player -> player.play(2, random));
          FaultPlayer.pause(20);
          return players.stream().anyMatch(FaultPlayer::warned);
        });
    acknowledgedIsStored();
  }

  private void hostile(FaultPlayer victim) {
    for (String text : Hostile.TEXTS) {
      try (RawLine stranger = RawLine.connect(host.port())) {
        stranger.sendText(text);
        stranger.read(); // an error or a goodbye
      } catch (java.io.UncheckedIOException closed) {
        // as it should be
      }
    }
    if (random.nextBoolean()) {
      victim.sendTorn();
      victim.cut();
    } else {
      victim.sendText(Hostile.TEXTS.get(random.nextInt(Hostile.TEXTS.size())));
    }
  }

  private void await(java.util.function.BooleanSupplier reached) {
    for (int i = 0; i < 1_500 && !reached.getAsBoolean(); i++) {
      FaultPlayer.pause(10);
      if (i == 1_499) {
        broken.add("waited in vain in " + fault);
      }
    }
  }

  // ------------------------------------------------------------------ what must hold

  private void acknowledgedIsStored() {
    for (FaultPlayer player : all()) {
      long acknowledged = player.acknowledged();
      long stored =
          Ledger.storedUpTo(host.database(), player.takeId(), player.playerId(), acknowledged);
      if (stored != acknowledged) {
        broken.add(player.playerId() + ": acknowledged " + acknowledged + ", stored " + stored);
      }
    }
  }

  private void checkStored() {
    for (FaultPlayer player : all()) {
      List<Long> stored = Ledger.micros(host.database(), player.takeId(), player.playerId());
      if (!stored.equals(player.generated())) {
        broken.add(
            player.playerId()
                + ": generated "
                + player.generated().size()
                + ", stored "
                + stored.size()
                + " or others");
      }
    }
    if (!Ledger.whole(host.database())) {
      broken.add("integrity_check");
    }
  }
}

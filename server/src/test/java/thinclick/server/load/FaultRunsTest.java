package thinclick.server.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 24 of the runs that src/bench/faults.sh makes by the hundred. */
class FaultRunsTest {
  @TempDir static Path shared;
  private static FaultyHost here;
  private static FaultyHost process;

  @TempDir Path folder;

  /** One in this process, one that can be killed and starved; run after run, room beside room. */
  @BeforeAll
  static void startHosts() throws IOException {
    here = FaultyHost.start(Fault.CUT, Files.createDirectory(shared.resolve("here")), null);
    process = FaultyHost.start(Fault.KILL, Files.createDirectory(shared.resolve("process")), null);
  }

  @AfterAll
  static void theirDatabasesAreWhole() {
    for (FaultyHost host : List.of(here, process)) {
      host.close();
      assertThat(Ledger.whole(host.database())).isTrue();
    }
  }

  @ParameterizedTest(name = "{0}, {1} runs")
  @CsvSource({
    "CUT, 3",
    "HALF_OPEN, 3",
    "DUPLICATES, 3",
    "REORDERED, 3",
    "HOSTILE_TEXT, 2",
    "SLOW_READER, 2",
    "CLOCK_JUMP, 3",
    "TWO_AT_ONCE, 3",
    "KILL, 1",
    "FULL_DISK, 1"
  })
  void everythingPlayedIsStoredOnceAndWhatIsAcknowledgedIsStored(Fault fault, int runs)
      throws IOException {
    assumeTrue(
        fault != Fault.FULL_DISK || Files.isExecutable(Path.of("/usr/bin/prlimit")),
        "no prlimit here: no disk can be made full");
    for (int seed = 1; seed <= runs; seed++) {
      List<String> broken =
          fault == Fault.CLOCK_JUMP
              ? FaultRun.of(fault, seed, Files.createDirectory(folder.resolve("" + seed)), null)
              : FaultRun.at(fault.ofTheProcess() ? process : here, fault, seed);
      assertThat(broken).as("%s, seed %d", fault, seed).isEmpty();
    }
  }

  @Test
  void aTakeSurvivesThatItsHostIsKilledTwiceWithADuoPlayingThroughIt() {
    Random random = new Random(1);
    List<FaultPlayer> duo = new ArrayList<>();
    Orchestra.play(process.port(), 2)
        .forEach(seat -> duo.add(new FaultPlayer(seat, process::port)));
    for (int kill = 1; kill <= 2; kill++) {
      duo.forEach(player -> player.play(20, random));
      process.killAndRestart();
      duo.forEach(player -> player.play(20, random)); // the click goes on in the room
      duo.forEach(player -> player.finish(random, () -> {}));
    }
    for (FaultPlayer player : duo) {
      assertThat(player.wrong()).isEmpty();
      assertThat(player.acknowledged()).isEqualTo(80);
      assertThat(Ledger.micros(process.database(), player.takeId(), player.playerId()))
          .as("each of 80 attacks once")
          .isEqualTo(player.generated());
    }
  }
}

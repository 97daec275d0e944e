package thinclick.server.load;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** A host that can be made to fail: in this process, or in one of its own where it is to die. */
final class FaultyHost implements AutoCloseable {
  private final Path folder;
  private final Path database;
  private final @Nullable Path disk;
  private @Nullable RehearsalHost here;
  private @Nullable ServerProcess process;
  private @Nullable VirtualTime time;
  private volatile int port;

  private FaultyHost(Path folder, @Nullable Path library) {
    this.folder = folder;
    this.database = folder.resolve("room.db");
    disk = library;
  }

  static FaultyHost start(Fault fault, Path folder, @Nullable Path library) {
    FaultyHost host = new FaultyHost(folder, library);
    if (fault.ofTheProcess()) {
      host.startProcess();
    } else if (fault == Fault.CLOCK_JUMP) {
      host.time = new VirtualTime(0);
      host.begin(HostOptions.local(host.database).on(host.time, host.time));
    } else {
      host.begin(HostOptions.local(host.database));
    }
    return host;
  }

  private void begin(HostOptions options) {
    here = RehearsalHost.start(options);
    port = here.port();
  }

  private void startProcess() {
    process =
        ServerProcess.withFaults(
            database, disk == null ? Path.of("/nothing/to/load") : disk, folder);
    port = process.port();
  }

  int port() {
    return port;
  }

  Path database() {
    return database;
  }

  /** The host stood still for so long, or its clock jumped. */
  void jump(long millis) {
    VirtualTime clock = time;
    if (clock != null) {
      clock.advanceTo(clock.nanos() + TimeUnit.MILLISECONDS.toNanos(millis));
    }
  }

  /** A flag for the disk, see src/bench/faults.c. */
  void flag(String name, boolean on) {
    try {
      if (on) {
        Files.createFile(folder.resolve(name));
      } else {
        Files.deleteIfExists(folder.resolve(name));
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** No file of the host may grow beyond what its journal has now and a little; or may again. */
  void full(boolean on) {
    try {
      long size = on ? Files.size(Path.of(database + "-wal")) + 2_000 : -1;
      Process limit =
          new ProcessBuilder(
                  "prlimit",
                  "--pid",
                  String.valueOf(process.pid()),
                  "--fsize=" + (on ? size + ":unlimited" : "unlimited:unlimited"))
              .inheritIO()
              .start();
      if (limit.waitFor() != 0) {
        throw new AssertionError("no limit could be set");
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  boolean alive() {
    return process == null || process.alive();
  }

  /** SIGKILL. */
  void kill() {
    process.kill();
  }

  /** SIGKILL, and the same database served again at another port. */
  void killAndRestart() {
    process.kill();
    startProcess();
  }

  @Override
  public void close() {
    if (here != null) {
      here.close();
    }
    if (process != null) {
      process.close(); // does nothing to one that is dead
    }
  }
}

package thinclick.server.host;

import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.MonotonicClock;
import thinclick.protocol.time.Timers;
import thinclick.server.net.RoomNews;

/**
 * How a host is to be started.
 *
 * @param reach where it is reached; by default on this computer alone, at a free port
 * @param database the SQLite file, made where it is missing; its folder must exist
 * @param clock from which room time is read
 * @param timers what waits by that clock; null: the event loops' own, which go by {@link
 *     MonotonicClock#SYSTEM}
 * @param hostKey what somebody at another computer must show to open a room; null: only this
 *     computer opens rooms
 * @param backupFolder where copies of the database are put; null: none are made
 * @param backupHours how often, from the start on
 * @param material a folder of drills and lessons that stand before the stock, read at the start;
 *     null: the stock alone
 * @param language in which the rooms' reviews and deals are said
 * @param news told of rooms that open and close
 * @param keeping how long takes are kept, and by which clock
 */
public record HostOptions(
    Reach reach,
    Path database,
    MonotonicClock clock,
    @Nullable Timers timers,
    @Nullable String hostKey,
    @Nullable Path backupFolder,
    int backupHours,
    @Nullable Path material,
    Locale language,
    RoomNews news,
    Keeping keeping) {
  /** The address that only this computer reaches. */
  public static final String HERE = "127.0.0.1";

  /** The port people are told to use. */
  public static final int USUAL_PORT = 7420;

  /** On this computer alone, at a free port, by the computer's own clock. */
  public static HostOptions local(Path database) {
    return new HostOptions(
        Reach.HERE,
        database,
        MonotonicClock.SYSTEM,
        null,
        null,
        null,
        24,
        null,
        Locale.ENGLISH,
        RoomNews.NONE,
        Keeping.USUAL);
  }

  private HostOptions but(Consumer<HostOptionsEdit> change) {
    HostOptionsEdit edit = new HostOptionsEdit(this);
    change.accept(edit);
    return edit.done();
  }

  /** The same on another address and port. */
  public HostOptions at(String otherHost, int otherPort) {
    return but(edit -> edit.reach = reach.at(otherHost, otherPort));
  }

  /** The same with another rule for encrypted lines. */
  public HostOptions encrypting(Encryption rule) {
    return but(edit -> edit.reach = reach.encrypting(rule));
  }

  /** The same with the operator's own certificate and its key, PEM files. */
  public HostOptions showing(Path certificate, Path key) {
    return but(edit -> edit.reach = reach.showing(certificate, key));
  }

  /** The same, announced in the local network under that name; not where it listens here alone. */
  public HostOptions announcedAs(String name) {
    return but(edit -> edit.reach = reach.calledInTheNetwork(name));
  }

  /** The same with {@code /metrics} open to other computers. */
  public HostOptions withMetricsToAll() {
    return but(edit -> edit.reach = reach.withMetricsToAll());
  }

  /** The same by another clock, with the timers that hang on it. */
  public HostOptions on(MonotonicClock otherClock, Timers otherTimers) {
    return but(
        edit -> {
          edit.clock = otherClock;
          edit.timers = otherTimers;
        });
  }

  /** The same with a key that opens rooms from other computers. */
  public HostOptions withHostKey(String key) {
    return but(edit -> edit.hostKey = key);
  }

  /** The same with a copy of the database every so many hours, the first at the start. */
  public HostOptions backedUp(Path folder, int hours) {
    return but(
        edit -> {
          edit.backupFolder = folder;
          edit.backupHours = hours;
        });
  }

  /** The same with a folder of drills and lessons before the stock. */
  public HostOptions withMaterial(Path folder) {
    return but(edit -> edit.material = folder);
  }

  /** The same, with reviews and deals said in another language, as far as it is spoken. */
  public HostOptions speaking(Locale wanted) {
    return but(edit -> edit.language = wanted);
  }

  /** The same, with somebody who is told of rooms. */
  public HostOptions telling(RoomNews listener) {
    return but(edit -> edit.news = listener);
  }

  /** The same, keeping takes for other than a year. */
  public HostOptions keeping(Keeping other) {
    return but(edit -> edit.keeping = other);
  }
}

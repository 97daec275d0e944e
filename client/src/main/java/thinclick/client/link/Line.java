package thinclick.client.link;

import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.time.Timers;

/**
 * The way to a server, made again after every cut until it is answered that trying is in vain. All
 * on the loop.
 */
final class Line {
  /** A line on which nothing has come for so long is dead, whatever TCP thinks. */
  static final long HALF_OPEN_NANOS = TimeUnit.SECONDS.toNanos(15);

  /** How long the first way in is tried again where a host is there but busy. */
  static final long FIRST_WAY_NANOS = TimeUnit.SECONDS.toNanos(30);

  /** What a line tells its owner. */
  interface Owner {
    /** It stands, for the first time or again; messages may be sent. */
    void opened();

    /** A text frame, read at {@code arrivedNanos} of the loop's clock. */
    void received(String json, long arrivedNanos);

    /** It was cut and will be made again; {@code says} is for a person. */
    void cut(String says);

    /** It is over and is not made again. */
    void over(String says);
  }

  private final RoomAddress address;
  private final LinkOptions options;
  private final Owner owner;
  private final Retry retry;
  private final Trust trust;
  private @Nullable Socket socket;
  private Timers.Pending watching = () -> {};
  private long heardNanos;
  private long beganNanos;
  private boolean began;
  private boolean worthIt;
  private boolean ended;

  /**
   * @param seed spreads the attempts of many who were cut at once
   */
  Line(RoomAddress address, LinkOptions options, long seed, Owner owner) {
    this.address = address;
    this.options = options;
    this.owner = owner;
    this.retry = new Retry(seed);
    this.trust = Trust.of(address, options.knownHosts());
  }

  void connect() {
    if (!began) {
      began = true;
      beganNanos = options.loop().nanos();
    }
    if (!ended) {
      socket = Socket.connect(address, options, trust, new Ear());
    }
  }

  /** A message sent on a dead line is lost, which the outbox makes good. */
  void send(ClientMessage message) {
    Socket open = socket;
    if (open != null) {
      open.send(message);
    }
  }

  /** From now on every cut is an accident: before that, whoever is not let in stays out. */
  void worthTrying() {
    worthIt = true;
  }

  /** Welcomed; the next cut is the first again. */
  void welcomed() {
    worthIt = true;
    retry.succeeded();
  }

  /** The server said when it wants to be asked again. */
  void askedToWait(@Nullable Long millis) {
    retry.asked(millis);
  }

  /** What the player should hear of how the server was recognised; empty for nothing. */
  String trustSays() {
    return trust.says();
  }

  /** Says goodbye and makes it no more; the owner hears nothing after that. */
  void end() {
    ended = true;
    watching.cancel();
    Socket open = socket;
    if (open != null) {
      open.close(1000, "");
    }
  }

  /** The socket's three calls; one an attempt, so that a late word of an old one is not heard. */
  private final class Ear implements Socket.Owner {
    private boolean over;

    @Override
    public void opened() {
      heardNanos = options.loop().nanos();
      watch();
      owner.opened();
    }

    @Override
    public void received(String json, long arrivedNanos) {
      if (!over && !ended) {
        heardNanos = arrivedNanos;
        owner.received(json, arrivedNanos);
      }
    }

    @Override
    public void closed(int code, String says) {
      if (!over) {
        over = true;
        lost(code, says);
      }
    }
  }

  private void watch() {
    watching.cancel();
    Socket watched = socket;
    watching =
        options
            .loop()
            .at(
                heardNanos + HALF_OPEN_NANOS,
                () -> {
                  if (watched != socket || watched == null) {
                    return;
                  }
                  if (options.loop().nanos() - heardNanos >= HALF_OPEN_NANOS) {
                    watched.cut();
                  } else {
                    watch();
                  }
                });
  }

  private void lost(int code, String says) {
    watching.cancel();
    if (ended) {
      return;
    }
    long waitMillis = retry.nextMillis();
    if (!again(code, waitMillis)) {
      ended = true;
      owner.over(says.isEmpty() ? "closed by the server (" + code + ")" : says);
      return;
    }
    owner.cut(says + "; trying again in " + waitMillis + " ms");
    options.loop().at(options.loop().nanos() + waitMillis * 1_000_000L, this::connect);
  }

  /** Whoever was never in comes in within a while or hears why not. */
  private boolean again(int code, long waitMillis) {
    if (worthIt) {
      return !Retry.isFinal(code);
    }
    long thenNanos = options.loop().nanos() + waitMillis * 1_000_000L;
    return Retry.passes(code) && thenNanos - beganNanos < FIRST_WAY_NANOS;
  }
}

package thinclick.server.load;

import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.IntSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;

/**
 * A player that keeps what is not acknowledged and comes back whatever happens, and that notices
 * when it is told what cannot be.
 */
final class FaultPlayer implements AutoCloseable {
  private static final Pattern THROUGH = Pattern.compile("\"throughSeq\":(\\d+)");
  private static final Pattern LEADER = Pattern.compile("\"role\":\"leader\"");
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(45);
  private static final long RESEND_MILLIS = 700;

  private final Orchestra.Seat seat;
  private final IntSupplier port;
  private final List<Long> generated = new ArrayList<>();
  private final List<String> wrong = Collections.synchronizedList(new ArrayList<>());
  private volatile RawLine line;
  private volatile long acknowledged;
  private volatile int played;
  private volatile String last = "";
  private volatile boolean dead;
  private volatile boolean warned;
  private volatile boolean reading = true;

  FaultPlayer(Orchestra.Seat seat, IntSupplier port) {
    this.seat = seat;
    this.port = port;
    this.line = seat.line();
    listen();
  }

  String playerId() {
    return seat.playerId();
  }

  String takeId() {
    return seat.takeId();
  }

  List<Long> generated() {
    return generated;
  }

  long acknowledged() {
    return acknowledged;
  }

  /** What this player was told against the rules. */
  List<String> wrong() {
    return List.copyOf(wrong);
  }

  /** True once it was told that the disk cannot be written. */
  boolean warned() {
    return warned;
  }

  boolean dead() {
    return dead;
  }

  // ------------------------------------------------------------------ playing

  /** Plays and sends so many, in random bunches. */
  void play(int count, Random random) {
    long first = generated.size() + 1L;
    for (int i = 0; i < count; i++) {
      generated.add(seat.startMicros() + generated.size() * 10_000L + random.nextInt(9_000));
    }
    played = generated.size();
    send(first, played, random);
  }

  /** Sends what was generated from one number to another, again or for the first time. */
  void send(long from, long to, Random random) {
    for (long first = from; first <= to; ) {
      int size = (int) Math.min(to - first + 1, 1 + random.nextInt(12));
      bunch(first, size);
      first += size;
    }
  }

  /** The same, the last bunch first. */
  void sendBackwards(long from, long to) {
    for (long last = to; last >= from; ) {
      int size = (int) Math.min(last - from + 1, 5);
      bunch(last - size + 1, size);
      last -= size;
    }
  }

  private void bunch(long first, int size) {
    List<WireAttack> attacks = new ArrayList<>();
    for (long seq = first; seq < first + size; seq++) {
      attacks.add(WireAttack.tap(generated.get((int) seq - 1)));
    }
    say(new TakeMessage.Attacks(seat.takeId(), 1, first, attacks));
  }

  private void say(ClientMessage message) {
    try {
      Orchestra.say(line, message);
    } catch (UncheckedIOException cut) {
      dead = true;
    }
  }

  void sendText(String text) {
    try {
      line.sendText(text);
    } catch (UncheckedIOException cut) {
      dead = true;
    }
  }

  /** Sends a piece of a frame and no more. */
  void sendTorn() {
    try {
      byte[] whole = RawLine.frame(RawLine.FIN | RawLine.TEXT, new byte[200]);
      line.send(java.util.Arrays.copyOf(whole, 40));
    } catch (UncheckedIOException cut) {
      dead = true;
    }
  }

  // ------------------------------------------------------------------ faults

  /** The line is gone for both. */
  void cut() {
    line.close();
    dead = true;
  }

  /** The line is forgotten here and stays open there. */
  void forgetLine() {
    dead = true;
  }

  /** Reads nothing from now on, or reads again. */
  void reading(boolean on) {
    reading = on;
  }

  /** Comes back with the token, as often as it takes. */
  void comeBack() {
    long giveUp = System.nanoTime() + PATIENCE_NANOS;
    while (true) {
      try {
        RawLine fresh = RawLine.connect(port.getAsInt());
        Orchestra.say(
            fresh,
            new ClientMessage.Join(
                1, 1, seat.word(), seat.name(), Role.PLAYER, seat.token(), null, false));
        fresh.expect("welcome");
        line = fresh;
        dead = false;
        listen();
        return;
      } catch (UncheckedIOException | AssertionError notYet) {
        if (System.nanoTime() > giveUp) {
          throw new AssertionError("no way back for " + seat.playerId(), notYet);
        }
        pause(50);
      }
    }
  }

  /** Resends until everything is acknowledged. */
  void finish(Random random, Runnable between) {
    long giveUp = System.nanoTime() + PATIENCE_NANOS;
    long resendAt = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(RESEND_MILLIS);
    while (acknowledged < generated.size()) {
      if (dead) {
        comeBack();
        send(acknowledged + 1, generated.size(), random);
      } else if (System.nanoTime() > resendAt) {
        send(acknowledged + 1, generated.size(), random);
        resendAt = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(RESEND_MILLIS);
      }
      if (System.nanoTime() > giveUp) {
        wrong.add(
            "acknowledged " + acknowledged + " of " + generated.size() + ", then nothing; " + last);
        return;
      }
      between.run();
      pause(2);
    }
  }

  static void pause(long millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  // ------------------------------------------------------------------ listening

  private void listen() {
    RawLine mine = line;
    Thread listener = new Thread(() -> listen(mine), "player");
    listener.setDaemon(true);
    listener.start();
  }

  private void listen(RawLine mine) {
    try {
      while (true) {
        while (!reading) {
          pause(5);
        }
        RawLine.Frame frame = mine.read();
        if (frame.opcode() == RawLine.PING) {
          mine.sendFrame(RawLine.FIN | RawLine.PONG, frame.payload());
        } else if (frame.opcode() == RawLine.CLOSE) {
          break;
        } else if (mine == line) { // what an older line still brings is of yesterday
          hear(frame.text());
        }
      }
    } catch (UncheckedIOException ended) {
      // the line is gone
    }
    if (mine == line) {
      dead = true;
    }
  }

  private void hear(String text) {
    if (text.startsWith("{\"type\":\"stored\"")) {
      Matcher through = THROUGH.matcher(text);
      if (through.find()) {
        stored(Long.parseLong(through.group(1)));
      }
    } else if (text.startsWith("{\"type\":\"roster\"")) {
      long leaders = LEADER.matcher(text).results().count();
      if (leaders > 1) {
        wrong.add(leaders + " leaders in " + text);
      }
    } else if (text.contains("\"code\":\"storeUnavailable\"")) {
      warned = true;
    } else if (text.contains("\"code\":\"seqConflict\"")) {
      wrong.add(text);
    } else if (text.startsWith("{\"type\":\"error\"")) {
      last = text;
    }
  }

  private synchronized void stored(long through) {
    if (through < acknowledged) {
      wrong.add("throughSeq fell from " + acknowledged + " to " + through);
    }
    if (through > played) {
      wrong.add("throughSeq " + through + " of " + played);
    }
    acknowledged = Math.max(acknowledged, through);
  }

  @Override
  public void close() {
    line.close();
  }
}

package thinclick.server.load;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;

/**
 * Strangers who mean ill, as a process of its own: members that send fuzz and floods and come again
 * when they are closed, joins with wrong words, lines that say nothing, members that never read.
 * Over loopback only. Each line on the standard input is for how many milliseconds they attack,
 * from an address that the host has not seen yet: its rations for one address are not used up.
 */
final class Attacker implements AutoCloseable {
  private static final int MUTE_LINES = 200;

  /** As many as a host lets one address make in a minute, though it lets its own make more. */
  private static final int ROOMS = 3;

  private static final long PAUSE_NANOS = 50_000;

  /** Stands in the texts for a player of the room that they are sent to. */
  private static final String SOMEBODY = "somebody-p1";

  private static final List<String> TEXTS = madeAhead();
  private static int next;

  private final InetAddress from;
  private final int port;
  private final long endNanos;
  private final Deque<RawLine> mute = new ArrayDeque<>();
  private ServerMessage.@Nullable Welcome room;
  private @Nullable String deafToken;
  private int rooms;
  private int lines;
  private int texts;

  private Attacker(InetAddress from, int port, long millis) {
    this.from = from;
    this.port = port;
    this.endNanos = System.nanoTime() + millis * 1_000_000;
  }

  public static void main(String[] arguments) throws IOException, InterruptedException {
    int port = Integer.parseInt(arguments[0]);
    System.out.println("attacks at ws://127.0.0.1:" + port + "/room");
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.US_ASCII));
    byte stretch = 1;
    for (String millis = in.readLine(); millis != null; millis = in.readLine()) {
      InetAddress from = InetAddress.getByAddress(new byte[] {127, 0, 1, stretch++});
      try (Attacker attacker = new Attacker(from, port, Long.parseLong(millis))) {
        attacker.attack();
        System.err.println(attacker.lines + " lines opened, " + attacker.texts + " texts");
      }
    }
  }

  private void attack() throws InterruptedException {
    while (goesOn()) {
      try {
        while (mute.size() < MUTE_LINES && goesOn()) {
          mute.add(RawLine.dial(from, port));
          lines++;
          pause();
        }
        mute.remove().close();
        fuzz();
        wrongWord();
      } catch (UncheckedIOException | AssertionError closed) {
        System.err.println(closed.toString().split("\n")[0]);
        Thread.sleep(5); // as it should be
      }
    }
  }

  /**
   * The players share this core: whoever wakes on it waits for what is done at once here, on some
   * systems for the rest of a tick. At another computer this would cost them nothing.
   */
  private static void pause() {
    LockSupport.parkNanos(PAUSE_NANOS);
  }

  private boolean goesOn() {
    return System.nanoTime() < endNanos;
  }

  private RawLine connect() {
    lines++;
    pause();
    return RawLine.connect(from, port);
  }

  /** The leader of a room of their own, opened once, and a member who never reads. */
  private void fuzz() {
    try (RawLine leader = connect();
        RawLine deaf = connect()) {
      ServerMessage.Welcome mine = room;
      if (mine == null) {
        if (rooms == ROOMS) {
          return;
        }
        rooms++;
        Orchestra.say(leader, new ClientMessage.OpenRoom(1, 1, null, "Mallory"));
        mine = Orchestra.hear(leader, "welcome", ServerMessage.Welcome.class);
        room = mine;
        deafToken = null;
      } else if (!isBack(leader, mine)) {
        return;
      }
      Orchestra.say(deaf, join(mine, "Deaf", Role.PLAYER, deafToken));
      if (deafToken == null) {
        deafToken = Orchestra.hear(deaf, "welcome", ServerMessage.Welcome.class).token();
      }
      send(mine.playerId(), leader, deaf);
    }
  }

  /** False where the room does not take its leader in, or not yet. */
  private boolean isBack(RawLine leader, ServerMessage.Welcome mine) {
    room = null; // a text may have ended it, or somebody tried too many words
    Orchestra.say(leader, join(mine, "Mallory", Role.LEADER, mine.leaderToken()));
    String answer = leader.read().text();
    boolean back = answer.contains("\"welcome\"");
    if (back || answer.contains("\"retryAfterMillis\":2000")) {
      room = mine;
    }
    return back;
  }

  /** Texts until the host has closed the leader's line. */
  private void send(String playerId, RawLine leader, RawLine deaf) {
    boolean deafIsIn = true;
    for (int i = 0; i < 2_000 && goesOn(); i++) {
      String text = TEXTS.get(next++ % TEXTS.size()).replace(SOMEBODY, playerId);
      if (deafIsIn && i % 4 == 3) {
        try {
          deaf.sendText(text);
        } catch (UncheckedIOException closed) {
          deafIsIn = false;
        }
      } else {
        leader.sendText(text);
      }
      texts++;
      pause();
    }
  }

  /** Made before anything is measured: who plays on this core waits for none of it. */
  private static List<String> madeAhead() {
    Fuzz fuzz = new Fuzz(1, "room-t1", "room-d1", SOMEBODY);
    return Stream.generate(fuzz::next).filter(text -> text.length() < 16_000).limit(5_000).toList();
  }

  private static ClientMessage join(
      ServerMessage.Welcome room, String name, Role role, @Nullable String token) {
    return new ClientMessage.Join(1, 1, room.room(), name, role, token, null, false);
  }

  private void wrongWord() {
    try (RawLine line = connect()) {
      line.sendText(
          "{\"type\":\"join\",\"versionMin\":1,\"versionMax\":1,\"room\":\"wrong"
              + lines
              + "\",\"name\":\"Player 1\",\"role\":\"leader\",\"token\":\"00\"}");
      line.closeCode();
    }
  }

  @Override
  public void close() {
    mute.forEach(RawLine::close);
  }
}

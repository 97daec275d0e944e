package thinclick.server.load;

import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;

/**
 * A stranger who means ill, as a process of its own, until it is stopped: members that send fuzz
 * and floods and come again when they are closed, joins with wrong words, lines that say nothing,
 * members that never read. Over loopback only.
 */
final class Attacker {
  private static final int MUTE_LINES = 200;

  private Attacker() {}

  public static void main(String[] arguments) throws InterruptedException {
    int port = Integer.parseInt(arguments[0]);
    List<RawLine> mute = new ArrayList<>();
    long seed = 1;
    System.out.println("attacks at ws://127.0.0.1:" + port + "/room");
    while (true) {
      try {
        while (mute.size() < MUTE_LINES) {
          mute.add(RawLine.dial(port));
        }
        mute.remove(0).close();
        fuzz(port, seed++);
        wrongWords(port);
      } catch (UncheckedIOException | AssertionError closed) {
        Thread.sleep(5); // as it should be
      }
    }
  }

  private static void fuzz(int port, long seed) {
    try (RawLine leader = RawLine.connect(port);
        RawLine deaf = RawLine.connect(port)) {
      Orchestra.say(leader, new ClientMessage.OpenRoom(1, 1, null, "Mallory"));
      ServerMessage.Welcome opened = Orchestra.hear(leader, "welcome", ServerMessage.Welcome.class);
      Orchestra.say(
          deaf,
          new ClientMessage.Join(1, 1, opened.room(), "Deaf", Role.PLAYER, null, null, false));
      Fuzz texts = new Fuzz(seed, "room-t1", "room-d1", opened.playerId());
      Random random = new Random(seed);
      for (int i = 0; i < 2_000; i++) {
        String text = texts.next();
        RawLine line = random.nextInt(4) == 0 ? deaf : leader;
        if (text.length() < 16_000) {
          line.sendText(text);
        }
      }
    }
  }

  private static void wrongWords(int port) {
    for (int i = 0; i < 20; i++) {
      try (RawLine line = RawLine.connect(port)) {
        line.sendText(
            "{\"type\":\"join\",\"versionMin\":1,\"versionMax\":1,\"room\":\"wrong"
                + i
                + "\",\"name\":\"Player 1\",\"role\":\"leader\",\"token\":\"00\"}");
        line.closeCode();
      }
    }
  }
}

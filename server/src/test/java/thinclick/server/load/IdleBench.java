package thinclick.server.load;

import io.netty.channel.EventLoopGroup;
import io.netty.channel.MultiThreadIoEventLoopGroup;
import io.netty.channel.nio.NioIoHandler;
import io.netty.handler.ssl.SslContext;
import io.netty.handler.ssl.SslContextBuilder;
import io.netty.handler.ssl.util.InsecureTrustManagerFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;

/**
 * What somebody costs who only sits there, and whether a newcomer is still answered: joined players
 * in rooms of 63, plain and encrypted, each kind against a host of its own.
 */
final class IdleBench {
  private static final int IN_A_ROOM = 63;
  private static final int AT_ONCE = 10;
  private static final int NEWCOMERS = 21;

  private IdleBench() {}

  public static void main(String[] arguments) throws Exception {
    int plain = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10_000;
    int encrypted = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 2_000;
    EventLoopGroup loops = new MultiThreadIoEventLoopGroup(1, NioIoHandler.newFactory());
    SslContext tls =
        SslContextBuilder.forClient()
            .trustManager(InsecureTrustManagerFactory.INSTANCE)
            .endpointIdentificationAlgorithm(null)
            .build();
    Figures first = measure(loops, plain, null);
    Figures second = measure(loops, encrypted, tls);
    System.out.println(
        String.format(
            Locale.ROOT,
            "idle: plain %d bytes-each %d newcomer-ms %.0f encrypted %d bytes-each %d newcomer-ms %.0f",
            plain,
            first.bytesEach,
            first.newcomerMillis,
            encrypted,
            second.bytesEach,
            second.newcomerMillis));
    loops.shutdownGracefully(0, 1, TimeUnit.SECONDS);
  }

  private record Figures(long bytesEach, double newcomerMillis) {}

  private static Figures measure(EventLoopGroup loops, int count, @Nullable SslContext tls)
      throws Exception {
    Path folder = Files.createTempDirectory(Path.of("server/target"), "idle");
    try (ServerProcess host =
        ServerProcess.thinclick(
            folder.resolve("room.db"),
            List.of("-Xmx1g"),
            tls == null ? List.of() : List.of("--encryption", "all"))) {
      IdleCrowd crowd = new IdleCrowd(loops, host.port(), tls);
      seat(crowd, 2 * IN_A_ROOM); // classes loaded, pools made
      long before = resident(host);
      seat(crowd, count);
      TimeUnit.SECONDS.sleep(16); // three pings, and longer than a silent line lives
      if (crowd.here() < count) {
        throw new AssertionError("only " + crowd.here() + " of " + count + " are still here");
      }
      long after = resident(host);
      List<Double> took = new ArrayList<>();
      String word = open(crowd);
      for (int i = 0; i < NEWCOMERS; i++) {
        long began = System.nanoTime();
        crowd.come(join(word, "Newcomer " + i)).get(20, TimeUnit.SECONDS);
        took.add((System.nanoTime() - began) / 1e6);
      }
      took.sort(null);
      System.out.println(
          String.format(
              Locale.ROOT,
              "%s: %d here, %d bytes resident each, newcomer from the connect to the welcome %.1f ms (median), %.1f ms (worst of %d)",
              tls == null ? "plain" : "encrypted",
              count,
              (after - before) / count,
              took.get(NEWCOMERS / 2),
              took.get(NEWCOMERS - 1),
              NEWCOMERS));
      return new Figures((after - before) / count, took.get(NEWCOMERS / 2));
    }
  }

  private static void seat(IdleCrowd crowd, int count) throws Exception {
    List<CompletableFuture<?>> joining = new ArrayList<>();
    String word = "";
    for (int i = 0; i < count; i++) {
      if (i % IN_A_ROOM == 0) {
        word = open(crowd);
      }
      joining.add(crowd.come(join(word, "Player " + i)));
      if (joining.size() == AT_ONCE || i == count - 1) {
        CompletableFuture.allOf(joining.toArray(CompletableFuture[]::new))
            .get(60, TimeUnit.SECONDS);
        joining.clear();
      }
    }
  }

  /** A new room's word; who opened it sits there too. */
  private static String open(IdleCrowd crowd) throws Exception {
    String welcome =
        crowd.come(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott")).get(20, TimeUnit.SECONDS);
    return ((ServerMessage.Welcome) MessageCodec.readServer(welcome)).room();
  }

  private static ClientMessage join(String word, String name) {
    return new ClientMessage.Join(1, 1, word, name, Role.PLAYER, null, null, false);
  }

  /** After a full collection, so that garbage is not charged to anybody. */
  private static long resident(ServerProcess host) throws IOException, InterruptedException {
    new ProcessBuilder("jcmd", String.valueOf(host.pid()), "GC.run")
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
    return Cpu.residentBytes(host.pid());
  }
}

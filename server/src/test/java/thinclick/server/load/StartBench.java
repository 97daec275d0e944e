package thinclick.server.load;

import java.io.File;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * From the command to a port that lets somebody in, and to the first answer on that very line: ours
 * against the bare relay, in pairs. Nothing that a server prints is believed: somebody knocks twice
 * a millisecond, and asks for {@code /health} as soon as the door opens.
 */
final class StartBench {
  private static final long KNOCK_NANOS = 500_000;
  private static final long LONGEST_NANOS = TimeUnit.SECONDS.toNanos(60);
  private static final byte[] QUESTION =
      "GET /health HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n".getBytes(StandardCharsets.US_ASCII);

  private StartBench() {}

  /**
   * Milliseconds until the line was open and until it was answered, by the clock and the processor.
   */
  private record Start(
      double bound, double answered, double processor, double answeredProcessor, String answer) {}

  /** Arguments: pairs, then the command of ours, {@code --}, and the bare one; PORT is put in. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    int pairs = Integer.parseInt(arguments[0]);
    List<String> all = List.of(arguments);
    int middle = all.indexOf("--");
    List<String> ourCommand = all.subList(1, middle);
    List<String> bareCommand = all.subList(middle + 1, all.size());
    List<Start> ours = new ArrayList<>();
    List<Start> bare = new ArrayList<>();
    for (int pair = 1; pair <= pairs; pair++) {
      Path folder = Files.createTempDirectory("start");
      Start one = start(ourCommand, folder);
      Start other = start(bareCommand, folder);
      if (!one.answer.startsWith("HTTP/1.1 200")) {
        throw new AssertionError("expected 200 from /health, found " + one.answer);
      }
      ours.add(one);
      bare.add(other);
      System.out.println(
          String.format(
              Locale.ROOT,
              "pair %d: bound %.0f ms (processor %.0f), /health answered %.0f (%.0f); bare %.0f (%.0f), %.0f (%.0f)",
              pair,
              one.bound,
              one.processor,
              one.answered,
              one.answeredProcessor,
              other.bound,
              other.processor,
              other.answered,
              other.answeredProcessor));
    }
    double a = median(ours.stream().map(Start::bound).toList());
    double b = median(bare.stream().map(Start::bound).toList());
    System.out.println(
        String.format(
            Locale.ROOT,
            "start: ratio %.2f ours-ms %.0f bare-ms %.0f answered-ms %.0f bare-answered-ms %.0f processor-ratio %.2f",
            a / b,
            a,
            b,
            median(ours.stream().map(Start::answered).toList()),
            median(bare.stream().map(Start::answered).toList()),
            median(ours.stream().map(Start::processor).toList())
                / median(bare.stream().map(Start::processor).toList())));
  }

  private static Start start(List<String> command, Path folder)
      throws IOException, InterruptedException {
    int port = freePort();
    List<String> words =
        command.stream()
            .map(word -> word.replace("PORT", "" + port).replace("FOLDER", folder.toString()))
            .toList();
    long began = System.nanoTime();
    Process process =
        new ProcessBuilder(words)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(new File(folder + "/err"))
            .start();
    try (SocketChannel line = knock(port, began, process)) {
      double bound = (System.nanoTime() - began) / 1e6;
      double processor = Cpu.nanosOf(process.pid()) / 1e6;
      line.write(ByteBuffer.wrap(QUESTION));
      ByteBuffer answer = ByteBuffer.allocate(512);
      line.read(answer);
      double answered = (System.nanoTime() - began) / 1e6;
      return new Start(
          bound,
          answered,
          processor,
          Cpu.nanosOf(process.pid()) / 1e6,
          new String(answer.array(), 0, answer.position(), StandardCharsets.US_ASCII));
    } finally {
      process.destroy();
      process.waitFor();
    }
  }

  private static SocketChannel knock(int port, long began, Process process) throws IOException {
    InetSocketAddress address = new InetSocketAddress("127.0.0.1", port);
    while (System.nanoTime() - began < LONGEST_NANOS && process.isAlive()) {
      SocketChannel line = SocketChannel.open();
      try {
        line.connect(address);
        return line;
      } catch (IOException refused) {
        line.close();
        LockSupport.parkNanos(KNOCK_NANOS);
      }
    }
    throw new AssertionError("nobody listened");
  }

  private static int freePort() throws IOException {
    try (ServerSocket any = new ServerSocket(0)) {
      return any.getLocalPort();
    }
  }

  private static double median(List<Double> values) {
    return values.stream().sorted().toList().get(values.size() / 2);
  }
}

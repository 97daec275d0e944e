package thinclick.server.host;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.server.command.ServerMain;

/** {@code serve} as a process of its own, so that it can be killed as a computer kills. */
final class HostProcess implements AutoCloseable {
  private static final Pattern ADDRESS = Pattern.compile("://[^ ]*:(\\d+)/room");

  private final Process process;
  private final int port;

  private HostProcess(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  static ProcessBuilder command(String... arguments) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xshare:auto",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                ServerMain.class.getName()));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command);
  }

  /** Starts it and waits for the line that says where it listens. */
  static HostProcess serve(Path database, String... more) {
    List<String> arguments =
        new ArrayList<>(List.of("serve", "--port", "0", "--db", database.toString()));
    arguments.addAll(List.of(more));
    try {
      Process process =
          command(arguments.toArray(String[]::new))
              .redirectError(new File(database + ".log"))
              .start();
      BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        Matcher address = ADDRESS.matcher(line);
        if (address.find()) {
          return new HostProcess(process, Integer.parseInt(address.group(1)));
        }
      }
      throw new AssertionError("the host ended before it listened, see " + database + ".log");
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  int port() {
    return port;
  }

  /** SIGKILL: no hook runs, nothing is flushed. */
  void kill() {
    process.destroyForcibly();
    await();
  }

  /** SIGTERM. */
  int stop() {
    process.destroy();
    return await();
  }

  private int await() {
    try {
      if (!process.waitFor(20, TimeUnit.SECONDS)) {
        throw new AssertionError("the host did not end within 20 s");
      }
      return process.exitValue();
    } catch (InterruptedException stopped) {
      throw new AssertionError(stopped);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}

package thinclick.server.load;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.server.command.ServerMain;

/** A server as a process of its own, on one core where the machine can do that. */
final class ServerProcess implements AutoCloseable {
  private static final Pattern ADDRESS = Pattern.compile("://[^ ]*:(\\d+)/room");

  private final Process process;
  private final int port;

  private ServerProcess(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /** {@code serve} on that database, without encryption. */
  static ServerProcess thinclick(Path database, List<String> jvm, List<String> more) {
    List<String> arguments =
        new ArrayList<>(List.of("serve", "--port", "0", "--db", database.toString()));
    arguments.addAll(more);
    return start(ServerMain.class.getName(), jvm, arguments, new File(database + ".log"), Map.of());
  }

  /** The same with a disk that obeys the files in a folder, see src/bench/faults.c. */
  static ServerProcess withFaults(Path database, Path library, Path faults) {
    return start(
        ServerMain.class.getName(),
        List.of("-Xshare:auto", "-XX:TieredStopAtLevel=1", "-Xmx128m"),
        List.of("serve", "--port", "0", "--db", database.toString()),
        new File(database + ".log"),
        Map.of("LD_PRELOAD", library.toString(), "FAULTS", faults.toString()));
  }

  static ServerProcess start(
      String mainClass,
      List<String> jvm,
      List<String> arguments,
      File log,
      Map<String, String> environment) {
    String core = System.getProperty("server.core", "");
    List<String> before = core.isEmpty() ? List.of() : List.of("taskset", "-c", core);
    return start(before, mainClass, jvm, arguments, log, environment);
  }

  /**
   * Somebody at another computer, so to speak: where there are two cores, on the one that the
   * server does not have, with what the players leave of it.
   */
  static ServerProcess elsewhere(String mainClass, List<String> arguments, File log) {
    List<String> before =
        System.getProperty("server.core", "").isEmpty() ? List.of() : List.of("nice", "-n", "19");
    return start(before, mainClass, List.of("-Xmx128m"), arguments, log, Map.of());
  }

  private static ServerProcess start(
      List<String> before,
      String mainClass,
      List<String> jvm,
      List<String> arguments,
      File log,
      Map<String, String> environment) {
    List<String> command = new ArrayList<>();
    if (!System.getProperty("others.class", "").isEmpty()) {
      command.addAll(List.of("chrt", "-o", "0")); // the players alone are in the real-time class
    }
    command.addAll(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(jvm);
    String more = System.getProperty("server.jvm", "");
    if (!more.isEmpty()) {
      command.addAll(List.of(more.split(" "))); // for a look with the flight recorder
    }
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), mainClass));
    command.addAll(arguments);
    try {
      ProcessBuilder builder =
          new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.appendTo(log));
      builder.environment().putAll(environment);
      Process process = builder.start();
      BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        Matcher address = ADDRESS.matcher(line);
        if (address.find()) {
          return new ServerProcess(process, Integer.parseInt(address.group(1)));
        }
      }
      throw new AssertionError("the server ended before it listened, see " + log);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  int port() {
    return port;
  }

  long pid() {
    return process.pid();
  }

  /** A line for its standard input. */
  void say(String line) {
    try {
      OutputStream in = process.getOutputStream();
      in.write((line + "\n").getBytes(StandardCharsets.UTF_8));
      in.flush();
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  boolean alive() {
    return process.isAlive();
  }

  /** SIGKILL: no hook runs, nothing is flushed. */
  void kill() {
    process.destroyForcibly();
    try {
      process.waitFor();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    process.destroy();
    try {
      process.waitFor();
    } catch (InterruptedException stopped) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}

package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thinclick.protocol.json.Check;
import thinclick.protocol.message.MessageCodec;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** {@code serve}: hosts rooms until it is told to stop. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = "Hosts rooms on one port until it is stopped (Ctrl+C, SIGTERM).")
public final class ServeCommand implements Runnable {
  @Option(
      names = "--host",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1",
      description = "Address to listen on; 0.0.0.0 for all (default: ${DEFAULT-VALUE}).")
  private String host = "127.0.0.1";

  @Option(
      names = "--port",
      paramLabel = "PORT",
      defaultValue = "" + HostOptions.USUAL_PORT,
      description = "Port to listen on; 0 for any free one (default: ${DEFAULT-VALUE}).")
  private int port = HostOptions.USUAL_PORT;

  @Option(
      names = "--db",
      paramLabel = "FILE",
      defaultValue = "thinclick.db",
      description = "Database file, made where it is missing (default: ${DEFAULT-VALUE}).")
  private Path database = Path.of("thinclick.db");

  @Option(
      names = "--host-key",
      paramLabel = "KEY",
      description =
          "What somebody at another computer must know to open a room, 12 to 128 characters"
              + " (default: rooms are opened on this computer only).")
  private @Nullable String hostKey;

  @Option(
      names = "--backup-to",
      paramLabel = "FOLDER",
      description = "Folder for copies of the database, the newest 14 of which stay.")
  private @Nullable Path backupFolder;

  @Option(
      names = "--backup-hours",
      paramLabel = "HOURS",
      defaultValue = "24",
      description = "How often a copy is made, the first at the start (default: ${DEFAULT-VALUE}).")
  private int backupHours = 24;

  @Option(
      names = "--material",
      paramLabel = "FOLDER",
      description = "A folder of your own *.drill.json and *.lesson.json files, read at the start.")
  private @Nullable Path material;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    Check.range("--port", port, 0L, 65_535);
    HostOptions options = HostOptions.local(database).at(host, port);
    String key = hostKey;
    if (key != null) {
      Check.length("--host-key", key, 12, 128);
      options = options.withHostKey(key);
    }
    Check.range("--backup-hours", backupHours, 1L, 8_760);
    if (backupFolder != null) {
      options = options.backedUp(backupFolder, backupHours);
    }
    if (material != null) {
      options = options.withMaterial(material);
    }
    RehearsalHost hosting = RehearsalHost.start(options);
    PrintWriter out = spec.commandLine().getOut();
    out.println(
        "Thinclick listens at ws://" + shown(host) + ":" + hosting.port() + MessageCodec.PATH);
    out.flush();
    waitForTheEnd(hosting);
  }

  /** A number of IP version 6 stands in brackets in an address. */
  private static String shown(String host) {
    return host.contains(":") ? "[" + host + "]" : host;
  }

  private static void waitForTheEnd(RehearsalHost hosting) {
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  hosting.close();
                  stopped.countDown();
                },
                "thinclick-stop"));
    try {
      stopped.await();
    } catch (InterruptedException interrupted) {
      hosting.close();
    }
  }
}

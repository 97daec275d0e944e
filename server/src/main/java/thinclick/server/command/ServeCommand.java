package thinclick.server.command;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.server.host.Encryption;
import thinclick.server.host.HostOptions;
import thinclick.server.host.Keeping;
import thinclick.server.host.RehearsalHost;
import thinclick.server.net.Port;

/** {@code serve}: hosts rooms until it is told to stop. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = {
      "Hosts rooms on one port.",
      "It ends when it is stopped (Ctrl+C, SIGTERM), or drained (POST /drain on this computer)"
          + " and the last take is over."
    })
public final class ServeCommand implements Callable<Integer> {
  @Option(
      names = "--host",
      paramLabel = "ADDRESS",
      defaultValue = HostOptions.HERE,
      description = "Address to listen on; 0.0.0.0 for all (default: ${DEFAULT-VALUE}).")
  private String host = HostOptions.HERE;

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

  @Option(
      names = "--encryption",
      paramLabel = "WHO",
      defaultValue = "others",
      description =
          "Who must come by an encrypted line: others (than this computer), all, or none"
              + " (default: ${DEFAULT-VALUE}).")
  private String encryption = "others";

  @Option(
      names = "--certificate",
      paramLabel = "FILE",
      description =
          "Your own certificate (PEM), followed by those that vouch for it (default: one is made"
              + " and kept beside the database).")
  private @Nullable Path certificate;

  @Option(
      names = "--certificate-key",
      paramLabel = "FILE",
      description = "The key of --certificate, PEM, without a password.")
  private @Nullable Path certificateKey;

  @Option(
      names = "--announce",
      paramLabel = "YES",
      arity = "1",
      defaultValue = "true",
      description =
          "Whether the host is announced in the local network (default: ${DEFAULT-VALUE}).")
  private boolean announce = true;

  @Option(
      names = "--called",
      paramLabel = "NAME",
      defaultValue = "Thinclick",
      description = "The name it is announced by (default: ${DEFAULT-VALUE}).")
  private String called = "Thinclick";

  @Option(
      names = "--metrics-to-all",
      paramLabel = "YES",
      arity = "1",
      defaultValue = "false",
      description = "Whether other computers may read /metrics (default: ${DEFAULT-VALUE}).")
  private boolean metricsToAll;

  @Mixin private LanguageOption language = new LanguageOption();

  @Option(
      names = "--keep-months",
      paramLabel = "MONTHS",
      defaultValue = "" + Keeping.USUAL_MONTHS,
      description =
          "How long takes are kept, 0 for ever; a class may say otherwise"
              + " (default: ${DEFAULT-VALUE}).")
  private int keepMonths = Keeping.USUAL_MONTHS;

  @Option(names = "--invite", description = "Show each room's join link as a QR code, too.")
  private boolean invite;

  @Option(
      names = "--invite-to",
      paramLabel = "FOLDER",
      description = "Folder for each room's QR code as a picture, SVG, while the room is open.")
  private @Nullable Path inviteFolder;

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description =
          "Read options from a TOML file: port = 7420, host-key = \"...\";"
              + " what is said on the command line counts more.")
  private @Nullable Path config;

  @Option(
      names = "--print-config",
      description = "Print such a file with all its defaults, then end.")
  private boolean printConfig;

  @ParentCommand private @Nullable ServerMain program;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    if (printConfig) {
      spec.commandLine().getOut().print(ServeConfig.withDefaults(spec));
      spec.commandLine().getOut().flush();
      return 0;
    }
    if (config == null) {
      serve(spec.commandLine());
      return 0;
    }
    ServeConfig file = ServeConfig.read(config, spec);
    List<String> all = spec.commandLine().getParseResult().originalArgs();
    List<String> said = all.subList(all.indexOf(spec.name()) + 1, all.size());
    ServeCommand whole = new ServeCommand();
    CommandLine line = new CommandLine(whole).setOverwrittenOptionsAllowed(true);
    line.parseArgs(file.before(said).toArray(String[]::new));
    try {
      whole.serve(spec.commandLine());
    } catch (BadInput bad) {
      throw file.explain(bad, said);
    }
    return 0;
  }

  private void serve(CommandLine terminal) {
    HostOptions options = options();
    HostNews news = new HostNews(terminal.getOut(), invite, inviteFolder);
    RehearsalHost hosting = RehearsalHost.start(options.telling(news), port());
    news.hosting(hosting, announce ? called : null);
    hosting.warmUp();
    ServeStop.waitForTheEnd(hosting);
  }

  private Port port() {
    HeadStart early = program == null ? null : program.early();
    return early == null ? Port.bind(host, port) : early.port(host, port);
  }

  private HostOptions options() {
    Check.range("--port", port, 0L, 65_535);
    HostOptions options =
        HostOptions.local(database).at(host, port).encrypting(who()).speaking(language.locale());
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
    if (certificate != null && certificateKey != null) {
      options = options.showing(certificate, certificateKey);
    } else if (certificate != null || certificateKey != null) {
      throw new BadInput(
          certificate == null ? "--certificate" : "--certificate-key",
          "expected it together with its companion, found none");
    }
    options = options.keeping(new Keeping(InstantSource.system(), keepMonths));
    Check.length("--called", called, 1, 40);
    if (announce) {
      options = options.announcedAs(called);
    }
    return metricsToAll ? options.withMetricsToAll() : options;
  }

  private Encryption who() {
    return switch (encryption) {
      case "others" -> Encryption.OTHERS;
      case "all" -> Encryption.ALL;
      case "none" -> Encryption.NONE;
      default ->
          throw new BadInput(
              "--encryption", "expected others, all or none, found \"" + encryption + "\"");
    };
  }
}

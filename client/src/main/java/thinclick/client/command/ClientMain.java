package thinclick.client.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import thinclick.client.window.WindowStart;
import thinclick.server.typed.Refusals;

/** The client jar's entry: finds the command and turns bad input into one line and exit code 2. */
@Command(
    name = "thinclick",
    mixinStandardHelpOptions = true,
    description = "Plays a part in a rehearsal; without a command it opens the window.",
    subcommands = {RehearseCommand.class, StandInCommand.class})
public final class ClientMain implements Runnable {
  /** Names how much is logged, read by logback.xml: DEBUG, INFO, WARN or ERROR. */
  private static final String LOG = "thinclick.log";

  /** The same for pauses of the process, of which a busy computer has many: lines of the host. */
  private static final String PAUSES = "thinclick.log.pauses";

  @Mixin private WindowArguments window = new WindowArguments();

  private ClientMain() {}

  public static void main(String[] args) {
    if (System.getProperty(LOG) == null) {
      System.setProperty(
          LOG, "WARN"); // a player's terminal shows the rehearsal, not the host's log
      System.setProperty(PAUSES, "ERROR");
    }
    System.exit(commandLine().execute(args));
  }

  /** The command line, also for tests. */
  public static CommandLine commandLine() {
    return Refusals.answeredBy(new CommandLine(new ClientMain()));
  }

  @Override
  public void run() {
    WindowStart.open(window.options());
  }
}

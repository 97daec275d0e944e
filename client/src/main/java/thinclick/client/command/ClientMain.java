package thinclick.client.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import thinclick.client.window.WindowStart;
import thinclick.protocol.json.BadInput;

/** The client jar's entry: finds the command and turns bad input into one line and exit code 2. */
@Command(
    name = "thinclick",
    mixinStandardHelpOptions = true,
    description = "Plays a part in a rehearsal; without a command it opens the window.",
    subcommands = {RehearseCommand.class, StandInCommand.class})
public final class ClientMain implements Runnable {
  /** Exit code for input that cannot be taken. */
  public static final int BAD_INPUT = 2;

  /** Names how much is logged, read by logback.xml: DEBUG, INFO, WARN or ERROR. */
  private static final String LOG = "thinclick.log";

  @Mixin private WindowArguments window = new WindowArguments();

  private ClientMain() {}

  public static void main(String[] args) {
    if (System.getProperty(LOG) == null) {
      System.setProperty(
          LOG, "WARN"); // a player's terminal shows the rehearsal, not the host's log
    }
    System.exit(commandLine().execute(args));
  }

  /** The command line, also for tests. */
  public static CommandLine commandLine() {
    CommandLine line = new CommandLine(new ClientMain());
    line.setExecutionExceptionHandler(
        (problem, command, parsed) -> {
          if (problem instanceof BadInput bad) {
            command.getErr().println(bad.getMessage());
            return BAD_INPUT;
          }
          throw problem;
        });
    line.setParameterExceptionHandler(
        (problem, words) -> {
          String said = String.valueOf(problem.getMessage()).lines().findFirst().orElse("");
          problem.getCommandLine().getErr().println(said);
          return BAD_INPUT;
        });
    return line;
  }

  @Override
  public void run() {
    WindowStart.open(window.options());
  }
}

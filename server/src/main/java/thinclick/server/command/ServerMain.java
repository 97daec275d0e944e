package thinclick.server.command;

import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;
import thinclick.server.net.Port;

/** The server jar's entry: finds the command and turns bad input into one line and exit code 2. */
@Command(
    name = "thinclick-server",
    mixinStandardHelpOptions = true,
    description = "Hosts rehearsals and works on what they leave behind.",
    subcommands = {
      ClassCommand.class,
      ComposeCommand.class,
      EraseCommand.class,
      GatherCommand.class,
      HistoryCommand.class,
      ReviewCommand.class,
      ServeCommand.class,
      TakeCommand.class
    })
public final class ServerMain implements Runnable {
  /** Exit code for input that cannot be taken. */
  public static final int BAD_INPUT = 2;

  private final @Nullable Port early;

  private ServerMain(@Nullable Port early) {
    this.early = early;
  }

  public static void main(String[] args) {
    System.exit(commandLine(HeadStart.of(args)).execute(args));
  }

  /** The port that was bound before the options were read; null for none. */
  @Nullable Port early() {
    return early;
  }

  /** The command line, also for tests. */
  public static CommandLine commandLine() {
    return commandLine(null);
  }

  private static CommandLine commandLine(@Nullable Port early) {
    CommandLine line = new CommandLine(new ServerMain(early));
    line.setExecutionExceptionHandler(
        (problem, command, parsed) -> {
          if (problem instanceof BadInput bad) {
            command.getErr().println(bad.getMessage());
            return BAD_INPUT;
          }
          throw problem;
        });
    line.setParameterExceptionHandler(
        (problem, args) -> {
          CommandLine command = problem.getCommandLine();
          command
              .getErr()
              .println(
                  String.valueOf(problem.getMessage()).lines().findFirst().orElse("wrong options")
                      + nearest(problem)
                      + "; see "
                      + command.getCommandSpec().qualifiedName()
                      + " --help");
          return BAD_INPUT;
        });
    return line;
  }

  /** The options that come nearest to one that is not there. */
  private static String nearest(CommandLine.ParameterException problem) {
    if (problem instanceof CommandLine.UnmatchedArgumentException unmatched
        && unmatched.isUnknownOption()) {
      List<String> options =
          problem.getCommandLine().getCommandSpec().optionsMap().keySet().stream()
              .filter(name -> name.startsWith("--"))
              .toList();
      return "; " + Nearest.didYouMean(unmatched.getUnmatched().get(0), options);
    }
    return "";
  }

  @Override
  public void run() {
    CommandLine.usage(this, System.out);
  }
}

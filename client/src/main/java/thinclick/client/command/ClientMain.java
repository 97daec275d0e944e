package thinclick.client.command;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import thinclick.client.window.WindowStart;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import thinclick.server.material.Nearest;

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
          CommandLine command = problem.getCommandLine();
          command
              .getErr()
              .println(
                  says(problem) + "; see " + command.getCommandSpec().qualifiedName() + " --help");
          return BAD_INPUT;
        });
    return line;
  }

  private static String says(CommandLine.ParameterException problem) {
    ArgSpec wanted = problem.getArgSpec();
    String said = String.valueOf(problem.getMessage()).lines().findFirst().orElse("wrong options");
    if (wanted instanceof OptionSpec option
        && problem.getValue() != null
        && said.startsWith("Invalid value for")) {
      return String.valueOf(
          StrictJson.mistyped(option.longestName(), option.type(), problem.getValue())
              .getMessage());
    }
    if (problem instanceof CommandLine.UnmatchedArgumentException unmatched
        && unmatched.isUnknownOption()) {
      List<String> options =
          problem.getCommandLine().getCommandSpec().optionsMap().keySet().stream()
              .filter(name -> name.startsWith("--"))
              .toList();
      String first = unmatched.getUnmatched().get(0);
      return first + ": no such option; " + Nearest.didYouMean(first, options);
    }
    return said.startsWith("Error: ") ? said.substring("Error: ".length()) : said;
  }

  @Override
  public void run() {
    WindowStart.open(window.options());
  }
}

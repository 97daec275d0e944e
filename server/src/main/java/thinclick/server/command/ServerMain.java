package thinclick.server.command;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Spec;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import thinclick.server.material.Nearest;

/** The server jar's entry: finds the command and turns bad input into one line and exit code 2. */
@Command(
    name = "thinclick-server",
    mixinStandardHelpOptions = true,
    description = "Hosts rehearsals and works on what they leave behind.")
public final class ServerMain implements Runnable {
  /** Exit code for input that cannot be taken. */
  public static final int BAD_INPUT = 2;

  /**
   * The commands by their names. Reading the options of one takes as long as it takes Java to
   * start; of all eight, a second on a small computer, so only those of the named one are read.
   */
  static final SortedMap<String, Class<?>> COMMANDS =
      new TreeMap<>(
          Map.of(
              "class",
              ClassCommand.class,
              "compose",
              ComposeCommand.class,
              "erase",
              EraseCommand.class,
              "gather",
              GatherCommand.class,
              "history",
              HistoryCommand.class,
              "review",
              ReviewCommand.class,
              "serve",
              ServeCommand.class,
              "take",
              TakeCommand.class));

  @Spec private CommandSpec spec = CommandSpec.create(); // set by picocli

  private final @Nullable HeadStart early;

  private ServerMain(@Nullable HeadStart early) {
    this.early = early;
  }

  public static void main(String[] args) {
    Class<?> named = args.length == 0 ? null : COMMANDS.get(args[0]);
    CommandLine line =
        commandLine(
            HeadStart.of(args), named == null ? COMMANDS.values() : List.<Class<?>>of(named));
    System.exit(line.execute(args));
  }

  /** What was begun before the options were read; null for nothing. */
  @Nullable HeadStart early() {
    return early;
  }

  /** The command line with all commands. */
  public static CommandLine commandLine() {
    return commandLine(null, COMMANDS.values());
  }

  private static CommandLine commandLine(@Nullable HeadStart early, Collection<Class<?>> commands) {
    CommandLine line = new CommandLine(new ServerMain(early));
    commands.forEach(line::addSubcommand);
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
                  says(problem) + "; see " + command.getCommandSpec().qualifiedName() + " --help");
          return BAD_INPUT;
        });
    return line;
  }

  /** One line: what was typed, what is wrong with it, and what comes nearest. */
  private static String says(CommandLine.ParameterException problem) {
    CommandSpec command = problem.getCommandLine().getCommandSpec();
    if (problem instanceof CommandLine.UnmatchedArgumentException unmatched) {
      String first = unmatched.getUnmatched().get(0);
      if (unmatched.isUnknownOption()) {
        List<String> options =
            command.optionsMap().keySet().stream().filter(name -> name.startsWith("--")).toList();
        return first + ": no such option; " + Nearest.didYouMean(first, options);
      }
      if (!command.subcommands().isEmpty()) {
        return "expected a command, found \""
            + first
            + "\"; "
            + Nearest.didYouMean(first, command.subcommands().keySet());
      }
    }
    ArgSpec wanted = problem.getArgSpec();
    String said = String.valueOf(problem.getMessage()).lines().findFirst().orElse("wrong options");
    if (wanted != null && problem.getValue() != null && said.startsWith("Invalid value for")) {
      String where =
          wanted instanceof OptionSpec option ? option.longestName() : wanted.paramLabel();
      return String.valueOf(
          StrictJson.mistyped(where, wanted.type(), problem.getValue()).getMessage());
    }
    return said;
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}

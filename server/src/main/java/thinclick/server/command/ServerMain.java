package thinclick.server.command;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import thinclick.server.typed.Refusals;

/** The server jar's entry: finds the command and turns bad input into one line and exit code 2. */
@Command(
    name = "thinclick-server",
    mixinStandardHelpOptions = true,
    description = "Hosts rehearsals and works on what they leave behind.")
public final class ServerMain implements Runnable {
  /** Exit code for input that cannot be taken. */
  public static final int BAD_INPUT = Refusals.BAD_INPUT;

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
    return Refusals.answeredBy(line);
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}

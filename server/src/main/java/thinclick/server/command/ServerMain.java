package thinclick.server.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import thinclick.protocol.json.BadInput;

/** The server jar's entry: finds the command and turns bad input into one line and exit code 2. */
@Command(
    name = "thinclick-server",
    mixinStandardHelpOptions = true,
    description = "Hosts rehearsals and works on what they leave behind.",
    subcommands = {GatherCommand.class, ReviewCommand.class, ServeCommand.class, TakeCommand.class})
public final class ServerMain implements Runnable {
  /** Exit code for input that cannot be taken. */
  public static final int BAD_INPUT = 2;

  private ServerMain() {}

  public static void main(String[] args) {
    System.exit(commandLine().execute(args));
  }

  /** The command line, also for tests. */
  public static CommandLine commandLine() {
    CommandLine line = new CommandLine(new ServerMain());
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
                      + "; see "
                      + command.getCommandSpec().qualifiedName()
                      + " --help");
          return BAD_INPUT;
        });
    return line;
  }

  @Override
  public void run() {
    CommandLine.usage(this, System.out);
  }
}

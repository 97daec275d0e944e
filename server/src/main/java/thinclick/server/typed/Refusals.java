package thinclick.server.typed;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import thinclick.server.material.Nearest;

/** What cannot be followed is answered by one line that says where and what, and an exit code. */
public final class Refusals {
  /** Exit code for input that cannot be taken. */
  public static final int BAD_INPUT = 2;

  private Refusals() {}

  /** The same command line, which answers so. */
  public static CommandLine answeredBy(CommandLine line) {
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

  /** What was typed, what is wrong with it, and what comes nearest. */
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
    return said.startsWith("Error: ") ? said.substring("Error: ".length()) : said;
  }
}

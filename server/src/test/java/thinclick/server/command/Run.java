package thinclick.server.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/**
 * What a command left behind.
 *
 * @param code its exit code
 * @param out what it printed
 * @param err what it complained of
 */
record Run(int code, String out, String err) {
  /** Runs a command of the server jar as the jar itself would. */
  static Run of(Object... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = ServerMain.commandLine();
    line.setOut(new PrintWriter(out));
    line.setErr(new PrintWriter(err));
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    int code = line.execute(words);
    return new Run(code, out.toString(), err.toString());
  }
}

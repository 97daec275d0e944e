package thinclick.client.window;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A display of its own without a screen, with a keyboard that a test types on. */
final class VirtualDisplay implements AutoCloseable {
  private final Process server;
  private final String name;

  private VirtualDisplay(Process server, String name) {
    this.server = server;
    this.name = name;
  }

  /** True where this computer has what virtual displays need. */
  static boolean canBeHad() {
    return has("Xvfb") && has("xdotool");
  }

  private static boolean has(String program) {
    for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
      if (Path.of(folder, program).toFile().canExecute()) {
        return true;
      }
    }
    return false;
  }

  /** Starts one under a number that is free. */
  static VirtualDisplay start() throws IOException {
    Process server =
        new ProcessBuilder(
                "Xvfb", "-displayfd", "1", "-screen", "0", "1180x800x24", "-nolisten", "tcp")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader said =
        new BufferedReader(
            new InputStreamReader(server.getInputStream(), StandardCharsets.US_ASCII));
    String number = said.readLine();
    if (number == null) {
      throw new IOException("the virtual display did not start");
    }
    return new VirtualDisplay(server, ":" + number.strip());
  }

  /** Lets a program be shown here. */
  void show(ProcessBuilder program) {
    program.environment().put("DISPLAY", name);
  }

  /** Presses and releases a key, as xdotool names it, and waits until that is done. */
  void press(String key) {
    run(List.of("xdotool", "key", "--clearmodifiers", key));
  }

  /** True where a window is shown whose title contains these words. */
  boolean shows(String title) {
    ProcessBuilder builder =
        new ProcessBuilder("xdotool", "search", "--name", title)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD);
    show(builder);
    try {
      return builder.start().waitFor() == 0;
    } catch (IOException failed) {
      throw new IllegalStateException(failed);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  /** Writes what is on the display to a picture file, where the program for it is installed. */
  void picture(Path file) {
    if (has("import")) {
      run(List.of("import", "-window", "root", file.toString()));
    }
  }

  private void run(List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(new ArrayList<>(command)).inheritIO();
    show(builder);
    try {
      Process process = builder.start();
      if (!process.waitFor(20, TimeUnit.SECONDS) || process.exitValue() != 0) {
        process.destroyForcibly();
        throw new IllegalStateException(String.join(" ", command) + " did not succeed");
      }
    } catch (IOException failed) {
      throw new IllegalStateException(failed);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  @Override
  public void close() {
    server.destroy();
  }
}

package thinclick.client.sound;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * An output that nobody hears and everything can be recorded from: PulseAudio's null sink, in user
 * space, through ALSA's plugin for it.
 */
final class NullSink implements AutoCloseable {
  private static final Path SERVER = Path.of("/usr/bin/pulseaudio");
  private static final List<Path> LIBRARIES =
      List.of(
          Path.of("/usr/lib/x86_64-linux-gnu/alsa-lib/libasound_module_pcm_pulse.so"),
          Path.of("/usr/lib/aarch64-linux-gnu/alsa-lib/libasound_module_pcm_pulse.so"));

  private final Path folder;
  private final Process server;

  private NullSink(Path folder, Process server) {
    this.folder = folder;
    this.server = server;
  }

  /** Why there is none on this computer; empty where there can be one. */
  static String missing() {
    if (!Files.isExecutable(SERVER)) {
      return "no null sink: pulseaudio is not installed";
    }
    return LIBRARIES.stream().anyMatch(Files::exists)
        ? ""
        : "no null sink: libasound2-plugins is not installed";
  }

  /** Starts one in a folder of its own. */
  static NullSink start(Path folder) throws IOException, InterruptedException {
    Path library = LIBRARIES.stream().filter(Files::exists).findFirst().orElseThrow();
    Files.writeString(
        folder.resolve("alsa.conf"),
        """
        pcm_type.pulse { lib %s }
        </usr/share/alsa/alsa.conf>
        pcm.!default { type pulse }
        """
            .formatted(library));
    ProcessBuilder builder =
        new ProcessBuilder(
            SERVER.toString(),
            "-n",
            "--daemonize=no",
            "--use-pid-file=no",
            "--exit-idle-time=-1",
            "-L",
            "module-null-sink sink_name=nul rate=48000 channels=2 norewinds=1",
            "-L",
            "module-native-protocol-unix auth-anonymous=1 socket=" + folder.resolve("native"));
    builder.environment().put("HOME", folder.toString());
    builder.environment().put("XDG_RUNTIME_DIR", folder.toString());
    builder.redirectErrorStream(true).redirectOutput(folder.resolve("pulse.log").toFile());
    Process server = builder.start();
    for (int i = 0; i < 200 && !Files.exists(folder.resolve("native")); i++) {
      if (server.waitFor(50, TimeUnit.MILLISECONDS)) {
        throw new IOException(
            "the null sink ended: " + Files.readString(folder.resolve("pulse.log")));
      }
    }
    return new NullSink(folder, server);
  }

  /** Runs a class with its sound going to the sink and its microphone on the sink's monitor. */
  List<String> run(Class<?> main, String... arguments) throws IOException, InterruptedException {
    List<String> command =
        Stream.concat(
                Stream.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp",
                    System.getProperty("java.class.path"),
                    main.getName()),
                Stream.of(arguments))
            .toList();
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder
        .environment()
        .putAll(
            Map.of(
                "PULSE_SERVER",
                "unix:" + folder.resolve("native"),
                "PULSE_SOURCE",
                "nul.monitor",
                "ALSA_CONFIG_PATH",
                folder.resolve("alsa.conf").toString(),
                "HOME",
                folder.toString()));
    Process process = builder.start();
    try (BufferedReader said =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      return said.lines().toList();
    } finally {
      process.waitFor(60, TimeUnit.SECONDS);
    }
  }

  @Override
  public void close() {
    server.destroy();
    try {
      server.waitFor(10, TimeUnit.SECONDS);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}

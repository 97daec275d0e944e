package thinclick.client.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.json.BadInput;

/**
 * The hosts that were met by their address alone, and the certificate each showed then: one a line,
 * {@code host:port fingerprint}. What came by a join link is not kept, since the link says it.
 */
final class KnownHosts {
  private static final Logger LOG = LoggerFactory.getLogger(KnownHosts.class);

  private final Path file;

  KnownHosts(Path file) {
    this.file = file;
  }

  Path file() {
    return file;
  }

  /** What the host showed when it was first met; null where it never was. */
  @Nullable Fingerprint of(String host) {
    try {
      List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
      for (int i = lines.size() - 1; i >= 0; i--) {
        String[] parts = lines.get(i).strip().split("\\s+", -1);
        if (parts.length == 2 && parts[0].equals(host)) {
          return new Fingerprint(parts[1]);
        }
      }
      return null;
    } catch (NoSuchFileException none) {
      return null;
    } catch (IOException | BadInput unreadable) {
      LOG.warn("{} cannot be read: {}", file, unreadable.getMessage());
      return null;
    }
  }

  /** Keeps it; a disk that cannot be written costs the memory, not the rehearsal. */
  void keep(String host, Fingerprint shown) {
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      Files.writeString(
          file,
          host + " " + shown + "\n",
          StandardCharsets.UTF_8,
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
    } catch (IOException problem) {
      LOG.warn("{} cannot be written: {}", file, problem.getMessage());
    }
  }
}

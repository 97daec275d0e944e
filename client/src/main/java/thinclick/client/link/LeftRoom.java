package thinclick.client.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage.Role;

/**
 * A room that an earlier run of this program was in when it ended without leaving: killed, or its
 * computer with it. Its journal's first line still says who was there, which is enough to be the
 * same one again, and the leader again.
 */
public final class LeftRoom {
  /** Nobody goes back into yesterday's room. */
  static final Duration TOO_OLD = Duration.ofHours(12);

  private static final Logger LOG = LoggerFactory.getLogger(LeftRoom.class);

  private final Path journal;
  private final JournalFile.Bearer bearer;
  private final Instant left;

  private LeftRoom(Path journal, JournalFile.Bearer bearer, Instant left) {
    this.journal = journal;
    this.bearer = bearer;
    this.left = left;
  }

  /**
   * The rooms whose journals lie in a folder, the last one first. What is too old and holds no
   * attacks is removed; what another run has open is left alone.
   *
   * @param now the wall clock
   */
  public static List<LeftRoom> in(Path folder, Instant now) {
    List<LeftRoom> found = new ArrayList<>();
    if (!Files.isDirectory(folder)) {
      return found;
    }
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(JournalFile::isOne).toList()) {
        look(file, now, found);
      }
    } catch (IOException unreadable) {
      LOG.warn("the rooms left in {} cannot be read: {}", folder, unreadable.getMessage());
    }
    found.sort(Comparator.comparing((LeftRoom room) -> room.left).reversed());
    return found;
  }

  private static void look(Path file, Instant now, List<LeftRoom> found) {
    try (JournalFile journal = JournalFile.look(file)) {
      Instant touched = Files.getLastModifiedTime(file).toInstant();
      boolean old = Duration.between(touched, now).compareTo(TOO_OLD) > 0;
      if (!old) {
        found.add(new LeftRoom(file, journal.bearer(), touched));
      } else if (journal.found().isEmpty()) {
        Files.deleteIfExists(file);
      }
    } catch (BadInput | IOException taken) {
      LOG.info("left as it is: {}", taken.getMessage());
    }
  }

  /** The nickname there. */
  public String name() {
    return bearer.name();
  }

  /** The room's word. */
  public String room() {
    return bearer.room();
  }

  /** Where the host was; one of this window's own may be at another port by now. */
  public RoomAddress address() {
    return RoomAddress.parse(bearer.server());
  }

  /** True for who led there. */
  public boolean led() {
    return bearer.role() == Role.LEADER;
  }

  /** The journal that tells of it. */
  public Path journal() {
    return journal;
  }

  JournalFile.Bearer bearer() {
    return bearer;
  }
}

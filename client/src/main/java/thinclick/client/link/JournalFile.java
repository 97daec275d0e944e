package thinclick.client.link;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.disk.SafeName;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.Lengths;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Attacks that the server has not yet stored, in a file, so that they outlive the program. First a
 * line that says who may bring them, then each attack, and each length once it is known, as the
 * message that will bring it. A take that the server takes nothing of is settled by a line that
 * says why. Once all are stored the file is cut back to its first line.
 *
 * <p>A disk that cannot be written costs the journal, never the playing: it is logged once.
 */
final class JournalFile implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(JournalFile.class);
  private static final String ENDING = ".journal";
  private static final int TOLD_BYTES = 8;
  private static final JsonMapper JSON = StrictJson.mapper(true, 4_096);

  /** Who may bring the attacks, and where. */
  record Bearer(
      String format,
      int version,
      String server,
      String room,
      String name,
      Role role,
      String token) {
    static final String FORMAT = "thinclick.journal";

    Bearer {
      if (!FORMAT.equals(format) || version != 1) {
        throw new BadInput("format", "expected " + FORMAT + " 1, found " + format + " " + version);
      }
    }
  }

  /** What was kept of a take before this line is given up, and why. */
  record Settled(String settled, String says) {
    static final String BEGINS = "{\"settled\":";
  }

  private final Path file;
  private final FileChannel channel;
  private final FileLock lock;
  private final Bearer bearer;
  private final List<ClientMessage> found;
  private final long headLength;
  private boolean broken;
  private boolean looking;

  private JournalFile(
      Path file,
      FileChannel channel,
      FileLock lock,
      Bearer bearer,
      List<ClientMessage> found,
      long headLength) {
    this.file = file;
    this.channel = channel;
    this.lock = lock;
    this.bearer = bearer;
    this.found = found;
    this.headLength = headLength;
  }

  /** Begins a journal, or null where the folder cannot be written. */
  static @Nullable JournalFile begin(Path folder, String playerId, Bearer bearer) {
    Path file = folder.resolve(SafeName.stem(playerId) + "-" + told(playerId, bearer) + ENDING);
    byte[] head = (JSON.writeValueAsString(bearer) + "\n").getBytes(StandardCharsets.UTF_8);
    try {
      Files.createDirectories(folder);
      FileChannel channel = open(file, StandardOpenOption.CREATE);
      FileLock lock = lock(channel, file);
      if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
      }
      channel.truncate(0);
      channel.write(ByteBuffer.wrap(head));
      return new JournalFile(file, channel, lock, bearer, List.of(), head.length);
    } catch (IOException problem) {
      LOG.warn("attacks are kept in memory only: {}", problem.toString());
      return null;
    }
  }

  /** Tells hosts apart that give out one id, by chance or to have another's journal cut. */
  private static String told(String playerId, Bearer bearer) {
    byte[] text = (bearer.server() + " " + playerId).getBytes(StandardCharsets.UTF_8);
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(text);
      return HexFormat.of().formatHex(digest, 0, TOLD_BYTES);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible); // every Java has it
    }
  }

  /**
   * Opens one that an earlier run left.
   *
   * @throws BadInput where it is not a journal, or another program has it open
   */
  static JournalFile resume(Path file) {
    try {
      FileChannel channel = open(file);
      FileLock lock = lock(channel, file);
      List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
      if (lines.isEmpty()) {
        throw new BadInput(file.toString(), "expected a journal, found an empty file");
      }
      Bearer bearer = JSON.readValue(lines.get(0), Bearer.class);
      long head = lines.get(0).getBytes(StandardCharsets.UTF_8).length + 1L;
      channel.position(channel.size());
      return new JournalFile(file, channel, lock, bearer, kept(file, lines), head);
    } catch (IOException problem) {
      throw new BadInput(file.toString(), "cannot be read: " + problem.getMessage());
    } catch (JacksonException problem) {
      throw StrictJson.explain(problem).within(file.toString());
    }
  }

  /**
   * Looks into one that an earlier run left; closing it leaves it where it is.
   *
   * @throws BadInput where it is not a journal, or another program has it open
   */
  static JournalFile look(Path file) {
    JournalFile found = resume(file);
    found.looking = true;
    return found;
  }

  /** True for a file that goes by a journal's name. */
  static boolean isOne(Path file) {
    return file.toString().endsWith(ENDING);
  }

  /** The journals in a folder that hold attacks nobody has brought yet. */
  static List<Path> leftIn(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> left = new ArrayList<>();
      for (Path file : files.filter(JournalFile::isOne).sorted().toList()) {
        try (Stream<String> lines = Files.lines(file, StandardCharsets.UTF_8)) {
          if (lines.skip(1).findFirst().isPresent()) {
            left.add(file);
          }
        }
      }
      return left;
    }
  }

  private static FileChannel open(Path file, StandardOpenOption... more) throws IOException {
    StandardOpenOption[] options = new StandardOpenOption[more.length + 2];
    options[0] = StandardOpenOption.READ;
    options[1] = StandardOpenOption.WRITE;
    System.arraycopy(more, 0, options, 2, more.length);
    return FileChannel.open(file, options);
  }

  private static FileLock lock(FileChannel channel, Path file) throws IOException {
    FileLock lock;
    try {
      lock = channel.tryLock(Long.MAX_VALUE - 1, 1, false); // beyond what is read
    } catch (OverlappingFileLockException here) {
      lock = null; // open in this very program
    }
    if (lock == null) {
      channel.close();
      throw new BadInput(file.toString(), "another program has this journal open");
    }
    return lock;
  }

  /** A last line that was torn off in the middle was never more than a copy in memory. */
  private static List<ClientMessage> kept(Path file, List<String> lines) {
    List<ClientMessage> found = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      try {
        if (lines.get(i).startsWith(Settled.BEGINS)) {
          String takeId = JSON.readValue(lines.get(i), Settled.class).settled();
          found.removeIf(kept -> takeId.equals(takeOf(kept)));
          continue;
        }
        ClientMessage kept = MessageCodec.readClient(lines.get(i));
        if (takeOf(kept) != null) {
          found.add(kept);
        }
      } catch (BadInput | MessageCodec.Malformed | JacksonException torn) {
        if (i < lines.size() - 1) {
          throw new BadInput(file + " line " + (i + 1), "expected an attacks message");
        }
      }
    }
    return found;
  }

  /** Of which take this is kept; null for what is not kept. */
  private static @Nullable String takeOf(ClientMessage kept) {
    return kept instanceof Attacks attacks
        ? attacks.takeId()
        : kept instanceof Lengths lengths ? lengths.takeId() : null;
  }

  Bearer bearer() {
    return bearer;
  }

  /** What an earlier run left, in the order it was played. */
  List<ClientMessage> found() {
    return found;
  }

  /** Writes one attack, or the length of one, down. */
  void keep(ClientMessage one) {
    write(MessageCodec.write(one) + "\n");
  }

  /** Nothing of this take is to be brought any more, and why. */
  void settle(String takeId, String says) {
    write(JSON.writeValueAsString(new Settled(takeId, says)) + "\n");
  }

  /** Everything that was kept is stored by the server, or settled. */
  void allStored() {
    try {
      if (!broken && channel.size() > headLength) {
        channel.truncate(headLength);
      }
    } catch (IOException problem) {
      broken(problem);
    }
  }

  private void write(String line) {
    if (broken) {
      return;
    }
    try {
      ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes, channel.size());
      }
    } catch (IOException problem) {
      broken(problem);
    }
  }

  private void broken(IOException problem) {
    broken = true;
    LOG.warn("attacks are kept in memory only from now on: {}", problem.toString());
  }

  /** Lets the file go; one that holds nothing more is removed. */
  @Override
  public void close() {
    try {
      boolean empty = channel.size() <= headLength;
      lock.release();
      channel.close();
      if (empty && !looking) {
        Files.deleteIfExists(file);
      }
    } catch (IOException problem) {
      broken(problem);
    }
  }
}

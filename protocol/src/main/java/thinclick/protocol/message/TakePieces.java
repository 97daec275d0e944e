package thinclick.protocol.message;

import java.io.ByteArrayOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.AnswerMessage.TakePiece;

/**
 * A take that is too long for one frame: its file cut into pieces, and gathered again. Every piece
 * names the SHA-256 of the whole file, so that one that has changed meanwhile is noticed.
 */
public final class TakePieces {
  private static final int LINE_BYTES = 3_072;

  /** Of the file in each piece but the last. */
  public static final int PIECE_BYTES = 56 * LINE_BYTES;

  private final List<TakePiece> gathered = new ArrayList<>();

  /** How many pieces a file comes in. */
  public static int count(byte[] file) {
    return Math.max(1, (file.length + PIECE_BYTES - 1) / PIECE_BYTES);
  }

  /**
   * One piece of a take.
   *
   * @param whole true where everybody's part is in it
   * @param piece from 1
   * @throws BadInput where there are not so many
   */
  public static TakePiece cut(String takeId, boolean whole, Take take, int piece) {
    byte[] file = FileCodec.write(take);
    int of = count(file);
    if (piece < 1 || piece > of) {
      throw new BadInput("piece", "expected 1 to " + of + ", found " + piece);
    }
    int end = Math.min(file.length, piece * PIECE_BYTES);
    List<String> lines = new ArrayList<>();
    for (int from = (piece - 1) * PIECE_BYTES; from < end; from += LINE_BYTES) {
      byte[] line = new byte[Math.min(LINE_BYTES, end - from)];
      System.arraycopy(file, from, line, 0, line.length);
      lines.add(Base64.getEncoder().encodeToString(line));
    }
    return new TakePiece(takeId, whole, piece, of, file.length, sha256(file), lines);
  }

  private static String sha256(byte[] file) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(file);
      return Base64.getUrlEncoder().withoutPadding().encodeToString(digest);
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("every Java platform has SHA-256", missing);
    }
  }

  /**
   * Takes the next piece.
   *
   * @return false where it is of another file than those before, which are forgotten
   */
  public boolean add(TakePiece piece) {
    TakePiece first = gathered.isEmpty() ? piece : gathered.get(0);
    boolean fits =
        piece.piece() == next()
            && piece.takeId().equals(first.takeId())
            && piece.whole() == first.whole()
            && piece.of() == first.of()
            && piece.sha256().equals(first.sha256());
    if (fits) {
      gathered.add(piece);
    } else {
      gathered.clear();
    }
    return fits;
  }

  /** The number of the piece that is wanted next. */
  public int next() {
    return gathered.size() + 1;
  }

  /** True once all are here. */
  public boolean complete() {
    return !gathered.isEmpty() && gathered.size() == gathered.get(0).of();
  }

  /**
   * The take; once it is {@link #complete}.
   *
   * @throws BadInput where what has come is not the file that was sent
   */
  public KeptTake take() {
    TakePiece first = gathered.get(0);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (TakePiece piece : gathered) {
      for (String line : piece.lines()) {
        try {
          bytes.writeBytes(Base64.getDecoder().decode(line));
        } catch (IllegalArgumentException noBase64) {
          throw new BadInput("lines", "expected base64 in piece " + piece.piece());
        }
      }
    }
    byte[] file = bytes.toByteArray();
    if (file.length != first.bytes() || !sha256(file).equals(first.sha256())) {
      throw new BadInput(
          "sha256",
          "expected "
              + first.bytes()
              + " bytes with the checksum that was sent, found "
              + file.length
              + " with another");
    }
    return new KeptTake(first.takeId(), first.whole(), FileCodec.readTake(file));
  }
}

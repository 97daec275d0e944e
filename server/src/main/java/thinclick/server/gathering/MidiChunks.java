package thinclick.server.gathering;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import thinclick.protocol.json.BadInput;

/**
 * The chunks of a Standard MIDI File (RP-001): its division and where its tracks lie. Whatever does
 * not fit is refused with its byte, before any event is read.
 *
 * @param division the header's division word: ticks a quarter, or SMPTE frames and ticks a frame
 * @param tracks in order
 */
record MidiChunks(short division, List<Chunk> tracks) {
  private static final int HEADER_BYTES = 14;
  private static final int MTHD = 0x4d546864;
  private static final int MTRK = 0x4d54726b;

  /**
   * One track chunk.
   *
   * @param from the byte where {@code MTrk} begins
   * @param to the byte after its last
   */
  record Chunk(int from, int to) {}

  /** Finds the tracks of a file of format 0 or 1. */
  static MidiChunks of(byte[] file) {
    if (file.length == 0) {
      throw new BadInput("byte 0", "expected a Standard MIDI File, found an empty one");
    }
    if (file.length < HEADER_BYTES || ByteBuffer.wrap(file).getInt(0) != MTHD) {
      throw new BadInput(
          "byte 0",
          "expected MThd, which begins a Standard MIDI File, found "
              + HexFormat.ofDelimiter(" ").formatHex(file, 0, Math.min(4, file.length))
              + (file.length < HEADER_BYTES ? " and " + file.length + " bytes in all" : ""));
    }
    ByteBuffer bytes = ByteBuffer.wrap(file);
    long headerLength = Integer.toUnsignedLong(bytes.getInt(4));
    if (headerLength < 6 || 8 + headerLength > file.length) {
      throw new BadInput("byte 4", "expected a header of 6 bytes, found " + headerLength);
    }
    int format = Short.toUnsignedInt(bytes.getShort(8));
    if (format > 1) {
      throw new BadInput("byte 8", "expected format 0 or 1, found " + format);
    }
    int announced = Short.toUnsignedInt(bytes.getShort(10));
    if (announced == 0 || (format == 0 && announced != 1)) {
      throw new BadInput(
          "byte 10",
          "expected " + (format == 0 ? "1 track in format 0" : "a track") + ", found " + announced);
    }
    short division = bytes.getShort(12);
    checkDivision(division);
    return new MidiChunks(division, tracks(bytes, 8 + (int) headerLength, announced));
  }

  private static void checkDivision(short division) {
    int frames = -(division >> 8);
    boolean smpte = division < 0;
    boolean known = frames == 24 || frames == 25 || frames == 29 || frames == 30;
    if (smpte && !known) {
      throw new BadInput("byte 12", "expected 24, 25, 29 or 30 frames a second, found " + frames);
    }
    if ((smpte ? division & 0xff : division) == 0) {
      throw new BadInput("byte 12", "expected at least 1 tick a quarter or frame, found 0");
    }
  }

  private static List<Chunk> tracks(ByteBuffer bytes, int first, int announced) {
    List<Chunk> tracks = new ArrayList<>();
    int at = first;
    while (tracks.size() < announced) {
      String where = "track " + (tracks.size() + 1) + ", byte " + at;
      int left = bytes.limit() - at - 8;
      if (left < 0) {
        throw new BadInput(
            where,
            "expected "
                + announced
                + (announced == 1 ? " track, found " : " tracks, found ")
                + tracks.size()
                + " whole ones");
      }
      long length = Integer.toUnsignedLong(bytes.getInt(at + 4));
      if (length > left) {
        throw new BadInput(where, "expected a chunk of " + length + " bytes, found " + left);
      }
      int end = at + 8 + (int) length;
      if (bytes.getInt(at) == MTRK) {
        tracks.add(new Chunk(at, end));
      }
      at = end; // chunks of other names are to be passed over
    }
    return List.copyOf(tracks);
  }
}

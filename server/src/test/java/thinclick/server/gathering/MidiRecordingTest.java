package thinclick.server.gathering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.json.BadInput;

class MidiRecordingTest {
  private static final long SEED = 20_260_103;

  /** The worked example of the Standard MIDI Files specification (RP-001), format 0. */
  private static final byte[] FORMAT_0 =
      Smf.hex(
          "4D 54 68 64 00 00 00 06 00 00 00 01 00 60",
          "4D 54 72 6B 00 00 00 3B",
          "00 FF 58 04 04 02 18 08  00 FF 51 03 07 A1 20  00 C0 05  00 C1 2E  00 C2 46",
          "00 92 30 60  00 3C 60  60 91 43 40  60 90 4C 20",
          "81 40 82 30 40  00 3C 40  00 81 43 40  00 80 4C 40  00 FF 2F 00");

  /** The same music in format 1. */
  private static final byte[] FORMAT_1 =
      Smf.hex(
          "4D 54 68 64 00 00 00 06 00 01 00 04 00 60",
          "4D 54 72 6B 00 00 00 14  00 FF 58 04 04 02 18 08  00 FF 51 03 07 A1 20  83 00 FF 2F 00",
          "4D 54 72 6B 00 00 00 10  00 C0 05  81 40 90 4C 20  81 40 4C 00  00 FF 2F 00",
          "4D 54 72 6B 00 00 00 0F  00 C1 2E  60 91 43 40  82 20 43 00  00 FF 2F 00",
          "4D 54 72 6B 00 00 00 15  00 C2 46  00 92 30 60  00 3C 60  83 00 30 00  00 3C 00",
          "00 FF 2F 00");

  @Nested
  class TheSpecificationsExample {
    @Test
    void isCopiedHereByteForByte() {
      assertThat(FORMAT_0).hasSize(81);
      assertThat(sha256(FORMAT_0)).startsWith("9c512dc6").endsWith("8536ed");
      assertThat(FORMAT_1).hasSize(118);
      assertThat(sha256(FORMAT_1)).startsWith("83ba1f52").endsWith("1729c7");
    }

    /** 96 ticks are half a second; all notes end after two seconds. */
    @Test
    void hasTheSameNotesInBothFormats() {
      List<RecordedNote> notes =
          List.of(
              new RecordedNote(0, 2_000_000L, 3, 48, 96),
              new RecordedNote(0, 2_000_000L, 3, 60, 96),
              new RecordedNote(500_000, 1_500_000L, 2, 67, 64),
              new RecordedNote(1_000_000, 1_000_000L, 1, 76, 32));

      assertThat(MidiRecording.read(FORMAT_0).notes()).isEqualTo(notes);
      assertThat(MidiRecording.read(FORMAT_1).notes()).isEqualTo(notes);
      assertThat(MidiRecording.read(FORMAT_1).onChannel(2)).containsExactly(notes.get(2));
    }
  }

  /** Variable-length quantities of the specification (RP-001). */
  @ParameterizedTest
  @CsvSource({
    "00,          0",
    "40,          40",
    "7F,          7F",
    "81 00,       80",
    "C0 00,       2000",
    "FF 7F,       3FFF",
    "81 80 00,    4000",
    "C0 80 00,    100000",
    "FF FF 7F,    1FFFFF",
    "81 80 80 00, 200000",
    "C0 80 80 00, 8000000",
    "FF FF FF 7F, FFFFFFF",
  })
  void aVariableLengthQuantityIsReadWhole(String bytes, String value) {
    // 32,767 ticks a quarter of 32,767 microseconds: a tick is a microsecond.
    String events = "00 FF 51 03 00 7F FF " + bytes + " 90 3C 40 00 FF 2F 00";
    int length = Smf.hex(events).length;
    byte[] file =
        Smf.hex(
            "4D 54 68 64 00 00 00 06 00 00 00 01 7F FF",
            "4D 54 72 6B 00 00 00 %02X".formatted(length),
            events);

    assertThat(MidiRecording.read(file).notes())
        .containsExactly(new RecordedNote(Long.parseLong(value, 16), null, 1, 60, 64));
  }

  @Nested
  class Time {
    /** Made for this project: 120 to 60 at beat 4, format 1, in 480 ticks a quarter. */
    @Test
    void aTempoChangeOfAnotherTrackIsHonoured() throws IOException {
      byte[] file;
      try (InputStream in =
          MidiRecordingTest.class.getResourceAsStream("/fixtures/tempo_change.mid")) {
        file = in.readAllBytes();
      }

      assertThat(MidiRecording.read(file).notes())
          .containsExactly(
              new RecordedNote(0, 250_000L, 1, 60, 90),
              new RecordedNote(1_500_000, 250_000L, 1, 62, 90),
              new RecordedNote(4_000_000, 500_000L, 1, 64, 90));
    }

    /** 6,144 ticks at 500,000 microseconds a quarter and 96 ticks are 32,000 ms (RP-001). */
    @Test
    void is120QuartersAMinuteWhereNothingIsSaid() {
      byte[] file =
          Smf.hex(
              "4D 54 68 64 00 00 00 06 00 00 00 01 00 60",
              "4D 54 72 6B 00 00 00 09 B0 00 90 3C 40 00 FF 2F 00");

      assertThat(MidiRecording.read(file).notes().get(0).micros()).isEqualTo(32_000_000);
    }

    /** E7 28: 25 frames of 40 ticks, so that a tick is a millisecond; tempo means nothing then. */
    @Test
    void ofFramesIsTakenAsFrames() {
      byte[] file =
          Smf.hex(
              "4D 54 68 64 00 00 00 06 00 00 00 01 E7 28",
              "4D 54 72 6B 00 00 00 13 00 FF 51 03 0F 42 40 87 68 90 3C 40 64 3C 00 00 FF 2F 00");

      assertThat(MidiRecording.read(file).notes())
          .containsExactly(new RecordedNote(1_000_000, 100_000L, 1, 60, 64));
    }

    @Test
    void of29FramesIsThirtyInOnePointOhOhOneSeconds() {
      TempoMap map = new TempoMap((short) 0xe350, Map.of());

      assertThat(map.microsAt(30 * 80)).isEqualTo(1_001_000);
    }

    @Test
    void addsUpExactlyOverManyTempoChanges() {
      // 1,000 quarters of 333,333 and 333,334 microseconds in turn, in 7 ticks each.
      Map<Long, Long> changes = new HashMap<>();
      for (long quarter = 0; quarter < 1_000; quarter++) {
        changes.put(quarter * 7, 333_333 + quarter % 2);
      }

      assertThat(new TempoMap((short) 7, changes).microsAt(7_000)).isEqualTo(333_333_500);
    }
  }

  @Nested
  class Notes {
    @Test
    void ofOneKeyStruckAgainBeforeItsReleaseEndInTurn() {
      byte[] file = track("00 90 3C 40 60 3C 41 60 3C 00 60 80 3C 40 00 FF 2F 00");

      assertThat(MidiRecording.read(file).notes())
          .containsExactly(
              new RecordedNote(0, 1_000_000L, 1, 60, 64),
              new RecordedNote(500_000, 1_000_000L, 1, 60, 65));
    }

    @Test
    void withoutAnEndHaveNoLength() {
      assertThat(MidiRecording.read(track("00 90 3C 40 60 3E 41 00 FF 2F 00")).notes())
          .extracting(RecordedNote::lengthMicros)
          .containsOnlyNulls();
    }

    @Test
    void areTheOnlyAttacks() {
      // Program, controller, pressure, pitch bend, sysex and text are passed over.
      assertThat(
              MidiRecording.read(
                      track(
                          "00 C0 05 00 B0 07 64 00 D0 40 00 E0 00 40 00 A0 3C 40",
                          "00 F0 03 43 12 F7 00 FF 01 02 48 69 60 90 3C 40 00 FF 2F 00"))
                  .notes())
          .containsExactly(new RecordedNote(500_000, null, 1, 60, 64));
    }
  }

  @Nested
  class AWrongFile {
    @ParameterizedTest
    @CsvSource(
        delimiter = '~',
        textBlock =
            """
            ''                                           ~ byte 0: expected a Standard MIDI File, found an empty one
            52 49 46 46 00 00 00 06 00 00 00 01 00 60    ~ byte 0: expected MThd, which begins a Standard MIDI File, found 52 49 46 46
            4D 54 68 64 00 00                            ~ byte 0: expected MThd, which begins a Standard MIDI File, found 4d 54 68 64 and 6 bytes in all
            4D 54 68 64 00 00 00 05 00 00 00 01 00 60    ~ byte 4: expected a header of 6 bytes, found 5
            4D 54 68 64 FF FF FF FF 00 00 00 01 00 60    ~ byte 4: expected a header of 6 bytes, found 4294967295
            4D 54 68 64 00 00 00 06 00 02 00 01 00 60    ~ byte 8: expected format 0 or 1, found 2
            4D 54 68 64 00 00 00 06 00 00 00 02 00 60    ~ byte 10: expected 1 track in format 0, found 2
            4D 54 68 64 00 00 00 06 00 01 00 00 00 60    ~ byte 10: expected a track, found 0
            4D 54 68 64 00 00 00 06 00 00 00 01 00 00    ~ byte 12: expected at least 1 tick a quarter or frame, found 0
            4D 54 68 64 00 00 00 06 00 00 00 01 E7 00    ~ byte 12: expected at least 1 tick a quarter or frame, found 0
            4D 54 68 64 00 00 00 06 00 00 00 01 80 28    ~ byte 12: expected 24, 25, 29 or 30 frames a second, found 128
            4D 54 68 64 00 00 00 06 00 00 00 01 00 60    ~ track 1, byte 14: expected 1 track, found 0 whole ones
            4D 54 68 64 00 00 00 06 00 00 00 01 00 60 4D 54 72 6B 00 00 00 09 00 FF 2F 00 ~ track 1, byte 14: expected a chunk of 9 bytes, found 4
            4D 54 68 64 00 00 00 06 00 01 00 02 00 60 4D 54 72 6B 00 00 00 04 00 FF 2F 00 4D 54 72 6B FF FF FF FF ~ track 2, byte 26: expected a chunk of 4294967295 bytes, found 0
            4D 54 68 64 00 00 00 06 00 00 00 01 00 60 4D 54 72 6B 00 00 00 08 00 90 BC 40 00 FF 2F 00 ~ track 1: expected a note from 0 to 127, found 188
            """)
    void isRefusedWithItsByteOrTrack(String hex, String says) {
      assertThatThrownBy(() -> MidiRecording.read(Smf.hex(hex)))
          .isInstanceOf(BadInput.class)
          .hasMessage(says);
    }

    @Test
    void thatEndsInsideAnEventNamesTrackAndByte() {
      byte[] file = track("00 90 3C");

      assertThatThrownBy(() -> MidiRecording.read(file))
          .isInstanceOf(BadInput.class)
          .hasMessageMatching("track 1, byte 2\\d: expected a MIDI event, found something else");
    }

    @Test
    void cutAtAnyByteIsRefused() {
      for (byte[] whole : List.of(FORMAT_0, FORMAT_1)) {
        for (int length = 0; length < whole.length; length++) {
          byte[] cut = Arrays.copyOf(whole, length);
          assertThat(catchThrowable(() -> MidiRecording.read(cut)))
              .as("cut at byte %d of %d", length, whole.length)
              .isInstanceOf(BadInput.class)
              .hasMessageMatching("(track \\d, )?byte \\d+: expected .*found .*");
        }
      }
    }

    @Test
    void ofNoiseIsReadOrRefusedAndNothingElse() {
      Random random = new Random(SEED);
      int refused = 0;
      for (int run = 0; run < 4_000; run++) {
        byte[] spoilt = (random.nextBoolean() ? FORMAT_0 : FORMAT_1).clone();
        for (int i = random.nextInt(4); i >= 0; i--) {
          spoilt[random.nextInt(spoilt.length)] = (byte) random.nextInt(256);
        }
        Throwable thrown = catchThrowable(() -> MidiRecording.read(spoilt));
        if (thrown != null) {
          refused++;
          assertThat(thrown)
              .as("seed %d, run %d, %s", SEED, run, HexFormat.of().formatHex(spoilt))
              .isInstanceOf(BadInput.class);
        }
      }
      assertThat(refused).isBetween(500, 3_500);
    }

    @Test
    void thatLastsForDaysIsRefused() {
      assertThatThrownBy(() -> MidiRecording.read(track("FF FF FF 7F 90 3C 40 00 FF 2F 00")))
          .hasMessage("track 1: expected a recording of at most 24 hours, found a note after them");
    }
  }

  private static byte[] track(String... events) {
    byte[] content = Smf.hex(events);
    return Smf.hex(
        "4D 54 68 64 00 00 00 06 00 00 00 01 00 60",
        "4D 54 72 6B %08X".formatted(content.length),
        HexFormat.of().formatHex(content));
  }

  private static String sha256(byte[] file) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}

package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;
import static thinclick.server.load.RawLine.BINARY;
import static thinclick.server.load.RawLine.CLOSE;
import static thinclick.server.load.RawLine.CONTINUATION;
import static thinclick.server.load.RawLine.FIN;
import static thinclick.server.load.RawLine.PING;
import static thinclick.server.load.RawLine.PONG;
import static thinclick.server.load.RawLine.TEXT;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.load.RawLine;

/** The line as RFC 6455 has it, by bare bytes; each test names its section. */
class FramesTest {
  private static final String OPEN =
      "{\"type\":\"openRoom\",\"versionMin\":1,\"versionMax\":1,\"name\":\"Frau Ott\"}";

  @TempDir static Path folder;
  private static RehearsalHost host;

  @BeforeAll
  static void start() {
    host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")));
  }

  @AfterAll
  static void stop() {
    host.close();
  }

  private static RawLine line() {
    return RawLine.connect(host.port());
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] code(int number) {
    return ByteBuffer.allocate(2).putShort((short) number).array();
  }

  /** What the server closes with after these bytes. */
  private static int closeAfter(byte[] sent) {
    try (RawLine line = line()) {
      line.send(sent);
      int code = line.closeCode();
      assertThat(line.ended()).as("the server lets the line go").isTrue();
      return code;
    }
  }

  // ------------------------------------------------------------------ 4 the opening handshake

  @Test
  void section1Point3AndSection4Point2Point2AcceptIsMadeFromTheKey() {
    try (RawLine line = RawLine.dial(host.port())) {
      line.send(bytes(RawLine.request("/room", host.port())));
      List<String> head = line.head();
      assertThat(head.get(0)).startsWith("HTTP/1.1 101");
      assertThat(head) // the RFC's own example
          .anyMatch(
              each -> each.equalsIgnoreCase("sec-websocket-accept: s3pPLMBiTxaQ9kYGzzhZRbK+xOo="));
      assertThat(head).noneMatch(each -> each.toLowerCase().startsWith("sec-websocket-ext"));
      assertThat(head).noneMatch(each -> each.toLowerCase().startsWith("sec-websocket-protocol"));
    }
  }

  @Test
  void section4Point2Point1AnotherPathIsNotFound() {
    assertThat(answer(RawLine.request("/else", host.port()))).startsWith("HTTP/1.1 404");
  }

  @Test
  void section4Point2Point1AnotherMethodIsNotAllowed() {
    assertThat(answer(RawLine.request("/room", host.port()).replace("GET", "POST")))
        .startsWith("HTTP/1.1 405");
  }

  @Test
  void section4Point4AnotherVersionIsAnsweredWithTheOneThatIsSpoken() {
    try (RawLine line = RawLine.dial(host.port())) {
      line.send(bytes(RawLine.request("/room", host.port()).replace(": 13", ": 99")));
      List<String> head = line.head();
      assertThat(head.get(0)).startsWith("HTTP/1.1 426");
      assertThat(head).anyMatch(each -> each.equalsIgnoreCase("sec-websocket-version: 13"));
    }
  }

  @Test
  void section4Point2Point1AMissingKeyIsRefused() {
    assertThat(
            answer(
                RawLine.request("/room", host.port())
                    .replaceFirst("Sec-WebSocket-Key: [^\r]*\r\n", "")))
        .startsWith("HTTP/1.1 400");
  }

  @Test
  void section10Point2APageOfABrowserIsRefusedWith1008() {
    try (RawLine line = RawLine.dial(host.port())) {
      line.send(
          bytes(
              RawLine.request("/room", host.port())
                  .replace("\r\n\r\n", "\r\nOrigin: http://elsewhere.example\r\n\r\n")));
      line.head();
      assertThat(line.closeCode()).isEqualTo(1008);
    }
  }

  private static String answer(String request) {
    try (RawLine line = RawLine.dial(host.port())) {
      line.send(bytes(request));
      return line.head().get(0);
    }
  }

  // ------------------------------------------------------------------ 5.1 to 5.4 frames

  @Test
  void section5Point1AnUnmaskedFrameIsClosedWith1002() {
    assertThat(closeAfter(RawLine.unmasked(FIN | TEXT, bytes(OPEN)))).isEqualTo(1002);
  }

  @Test
  void section5Point1TheServerMasksNothing() {
    try (RawLine line = line()) {
      line.sendText(OPEN);
      line.expect("welcome"); // RawLine refuses a masked frame
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0x40, 0x20, 0x10})
  void section5Point2AReservedBitIsClosedWith1002(int bit) {
    assertThat(closeAfter(RawLine.frame(FIN | bit | TEXT, bytes(OPEN)))).isEqualTo(1002);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 6, 7, 11, 12, 13, 14, 15})
  void section5Point2AReservedOpcodeIsClosedWith1002(int opcode) {
    assertThat(closeAfter(RawLine.frame(FIN | opcode, new byte[0]))).isEqualTo(1002);
  }

  @Test
  void section5Point2ALengthThatIsNegativeIsClosed() {
    byte[] head = {(byte) (FIN | TEXT), (byte) 0xff, -1, -1, -1, -1, -1, -1, -1, -1, 1, 2, 3, 4};
    assertThat(closeAfter(head)).isIn(1002, 1009);
  }

  @Test
  void section5Point4AMessageMayComeInFragments() {
    try (RawLine line = line()) {
      line.sendFrame(TEXT, bytes(OPEN.substring(0, 20)));
      line.sendFrame(CONTINUATION, bytes(OPEN.substring(20, 40)));
      line.sendFrame(FIN | CONTINUATION, bytes(OPEN.substring(40)));
      line.expect("welcome");
    }
  }

  @Test
  void section5Point4FragmentsMayBeEmpty() {
    try (RawLine line = line()) {
      line.sendFrame(TEXT, new byte[0]);
      line.sendFrame(CONTINUATION, bytes(OPEN));
      line.sendFrame(FIN | CONTINUATION, new byte[0]);
      line.expect("welcome");
    }
  }

  @Test
  void section5Point4AControlFrameMayComeBetweenFragments() {
    try (RawLine line = line()) {
      line.sendFrame(TEXT, bytes(OPEN.substring(0, 20)));
      line.sendFrame(FIN | PING, bytes("between"));
      RawLine.Frame pong = line.read();
      assertThat(pong.opcode()).isEqualTo(PONG);
      assertThat(pong.text()).isEqualTo("between");
      line.sendFrame(FIN | CONTINUATION, bytes(OPEN.substring(20)));
      line.expect("welcome");
    }
  }

  @Test
  void section5Point4AContinuationOfNothingIsClosedWith1002() {
    assertThat(closeAfter(RawLine.frame(FIN | CONTINUATION, bytes(OPEN)))).isEqualTo(1002);
  }

  @Test
  void section5Point4AMessageInsideAnotherIsClosedWith1002() {
    try (RawLine line = line()) {
      line.sendFrame(TEXT, bytes(OPEN.substring(0, 20)));
      line.sendFrame(FIN | TEXT, bytes(OPEN));
      assertThat(line.closeCode()).isEqualTo(1002);
    }
  }

  // ------------------------------------------------------------------ 5.5 control frames

  @ParameterizedTest
  @ValueSource(ints = {CLOSE, PING, PONG})
  void section5Point5AControlFrameInFragmentsIsClosedWith1002(int opcode) {
    assertThat(closeAfter(RawLine.frame(opcode, new byte[0]))).isEqualTo(1002);
  }

  @ParameterizedTest
  @ValueSource(ints = {CLOSE, PING, PONG})
  void section5Point5AControlFrameOfMoreThan125BytesIsClosedWith1002(int opcode) {
    byte[] payload = new byte[126];
    Arrays.fill(payload, (byte) 'a');
    payload[0] = 3;
    payload[1] = (byte) 0xe8;
    assertThat(closeAfter(RawLine.frame(FIN | opcode, payload))).isEqualTo(1002);
  }

  @Test
  void section5Point5Point1ACloseIsAnsweredWithItsCode() {
    assertThat(closeAfter(RawLine.frame(FIN | CLOSE, code(1000)))).isEqualTo(1000);
  }

  @Test
  void section5Point5Point1ACloseWithoutACodeIsAnswered() {
    assertThat(closeAfter(RawLine.frame(FIN | CLOSE, new byte[0]))).isIn(1000, 1005);
  }

  @Test
  void section5Point5Point1ACloseOfOneByteIsClosedWith1002() {
    assertThat(closeAfter(RawLine.frame(FIN | CLOSE, new byte[] {3}))).isEqualTo(1002);
  }

  @Test
  void section5Point5Point2APingIsAnsweredWithItsOwnBytes() {
    byte[] payload = new byte[125];
    Arrays.fill(payload, (byte) 0xfe);
    try (RawLine line = line()) {
      line.sendFrame(FIN | PING, payload);
      RawLine.Frame pong = line.read();
      assertThat(pong.opcode()).isEqualTo(PONG);
      assertThat(pong.payload()).isEqualTo(payload);
    }
  }

  @Test
  void section5Point5Point3APongThatNobodyAskedForIsIgnored() {
    try (RawLine line = line()) {
      line.sendFrame(FIN | PONG, bytes("?"));
      line.sendText(OPEN);
      line.expect("welcome");
    }
  }

  // ------------------------------------------------------------------ 5.6 and 7.4 data, codes

  @Test
  void section5Point6ABinaryMessageIsClosedWith1003() {
    assertThat(closeAfter(RawLine.frame(FIN | BINARY, bytes(OPEN)))).isEqualTo(1003);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 999, 1004, 1005, 1006, 1015, 2999})
  void section7Point4ACodeThatMustNotBeSentIsClosedWith1002(int number) {
    assertThat(closeAfter(RawLine.frame(FIN | CLOSE, code(number)))).isEqualTo(1002);
  }

  @ParameterizedTest
  @ValueSource(
      ints = {1000, 1001, 1002, 1003, 1007, 1008, 1009, 1010, 1011, 3000, 3999, 4000, 4999})
  void section7Point4ACodeThatMayBeSentIsAnswered(int number) {
    assertThat(closeAfter(RawLine.frame(FIN | CLOSE, code(number)))).isEqualTo(number);
  }

  @Test
  void section7Point4Point1AMessageOverTheLimitIsClosedWith1009() {
    byte[] long1 = new byte[16_385];
    Arrays.fill(long1, (byte) ' ');
    assertThat(closeAfter(RawLine.frame(FIN | TEXT, long1))).isEqualTo(1009);
  }

  @Test
  void section7Point4Point1AMessageOverTheLimitInFragmentsIsClosedWith1009() {
    byte[] part = new byte[6_000];
    Arrays.fill(part, (byte) ' ');
    try (RawLine line = line()) {
      line.sendFrame(TEXT, part);
      line.sendFrame(CONTINUATION, part);
      line.sendFrame(CONTINUATION, part);
      assertThat(line.closeCode()).isEqualTo(1009);
    }
  }

  // ------------------------------------------------------------------ 8 UTF-8

  @ParameterizedTest
  @ValueSource(
      strings = {
        "wIA=", // C0 80, an overlong zero
        "7aCA", // ED A0 80, half of a surrogate pair
        "9JCAgA==", // F4 90 80 80, beyond U+10FFFF
        "/w==", // FF
        "4oI=" // E2 82, cut short
      })
  void section8Point1WhatIsNotUtf8IsClosedWith1007(String base64) {
    assertThat(closeAfter(RawLine.frame(FIN | TEXT, Base64.getDecoder().decode(base64))))
        .isEqualTo(1007);
  }

  @Test
  void section8Point1ACharacterMayBeSplitBetweenFragments() {
    byte[] open = bytes(OPEN.replace("Frau Ott", "Zoë"));
    int inside = OPEN.indexOf("Frau") + 3; // after the first of the two bytes of ë
    try (RawLine line = line()) {
      line.sendFrame(TEXT, Arrays.copyOf(open, inside));
      line.sendFrame(FIN | CONTINUATION, Arrays.copyOfRange(open, inside, open.length));
      line.expect("welcome");
    }
  }

  @Test
  void section8Point1AReasonThatIsNotUtf8IsClosed() {
    byte[] payload = {3, (byte) 0xe8, (byte) 0xff};
    assertThat(closeAfter(RawLine.frame(FIN | CLOSE, payload))).isIn(1007, 1002);
  }
}

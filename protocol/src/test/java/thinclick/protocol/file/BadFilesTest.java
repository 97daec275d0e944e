package thinclick.protocol.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.json.BadInput;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Every wrong file gets one line: where, what was expected, what was found. */
class BadFilesTest {
  private static final long SEED = 20_260_102;
  private static final JsonMapper LOOSE = JsonMapper.builder().build();

  /** The three kinds of file, each with a small whole example. */
  enum Kind {
    TAKE("/fixtures/whole.take.json", FileCodec::readTake),
    DRILL("/drills/long-threes.json", FileCodec::readDrill),
    LESSON("/drills/first-day.lesson.json", FileCodec::readLesson);

    final String example;
    final Function<byte[], Record> reading;

    Kind(String example, Function<byte[], Record> reading) {
      this.example = example;
      this.reading = reading;
    }

    byte[] bytes() {
      return Resource.text(example).strip().getBytes(StandardCharsets.UTF_8);
    }
  }

  @ParameterizedTest
  @EnumSource
  void aFileCutAtAnyByteIsRefused(Kind kind) {
    byte[] whole = kind.bytes();
    for (int length = 0; length < whole.length; length++) {
      BadInput refusal = refusal(kind, Arrays.copyOf(whole, length), "cut at byte " + length);
      assertThat(refusal.where())
          .as("cut at byte %d", length)
          .matches("byte \\d+|line \\d+, column \\d+");
    }
  }

  @ParameterizedTest
  @EnumSource
  void anEmptyFileIsRefusedByName(Kind kind) {
    assertThat(refusal(kind, new byte[0], "empty"))
        .hasMessage(
            "byte 0: expected a thinclick."
                + kind.name().toLowerCase(Locale.ROOT)
                + " file, found an empty one");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"toBar\": 8}|\"toBar\": 4}|parts[0].free[1].toBar: expected more than fromBar, 4, found 4",
        "\"toBar\": 8}|\"toBar\": 13}|parts[0].free[1].toBar: expected at most the stages' 12 bars,"
            + " found 13",
        "\"fromBar\": 4|\"fromBar\": 3|parts[0].free[1].fromBar: expected 4 to 1000000, found 3",
        "[0, 3, 64|[0, 9, 64|parts[0].attackSteps[1]: expected nothing written in bars that are free,"
            + " found step 9 in bar 1",
        "\"toBar\": 8}|\"toBar\": 8, \"everyBars\": 8}|everyBars"
      })
  void freeBarsThatCannotBeAreRefused(String right, String wrong, String says) {
    String file = Resource.text("/fixtures/free.take.json").replace(right, wrong);

    assertThat(catchThrowable(() -> FileCodec.readTake(file.getBytes(StandardCharsets.UTF_8))))
        .hasMessageContaining(says);
  }

  @ParameterizedTest
  @EnumSource
  void noiseIsRefused(Kind kind) {
    Random random = new Random(SEED);
    for (int run = 0; run < 2_000; run++) {
      byte[] noise = new byte[1 + random.nextInt(300)];
      random.nextBytes(noise);
      refusal(kind, noise, "seed " + SEED + ", run " + run);
    }
  }

  @ParameterizedTest
  @EnumSource
  void aFileWithWrongBytesIsReadOrRefusedAndNothingElse(Kind kind) {
    Random random = new Random(SEED);
    int refused = 0;
    for (int run = 0; run < 4_000; run++) {
      byte[] spoilt = kind.bytes();
      for (int i = random.nextInt(3); i >= 0; i--) {
        spoilt[random.nextInt(spoilt.length)] = (byte) random.nextInt(256);
      }
      refused += readOrRefused(kind, spoilt, "seed " + SEED + ", run " + run);
    }
    assertThat(refused).isGreaterThan(3_000);
  }

  /** Each value in turn becomes each of these; what is refused is refused at that place. */
  @ParameterizedTest
  @EnumSource
  void aValueOfAWrongKindIsRefusedWhereItStands(Kind kind) {
    JsonNode root = LOOSE.readTree(kind.bytes());
    List<String> wrong =
        List.of(
            "\"3\"",
            "null",
            "[]",
            "{}",
            "true",
            "-1",
            "\"\"",
            "1.5",
            "9223372036854775807",
            "[1]",
            "{\"x\":1}",
            "[null]",
            "[[]]",
            "1e300",
            "\"\\u0007\\n\"");
    List<String> mistaken = new ArrayList<>();
    for (String json : wrong) {
      eachValue(
          root,
          "",
          LOOSE.readTree(json),
          path -> {
            byte[] file = LOOSE.writeValueAsBytes(root);
            Throwable thrown = catchThrowable(() -> kind.reading.apply(file));
            String tried = path + " = " + json;
            if (thrown != null) {
              BadInput refusal = asOneLine(thrown, tried);
              // A name changed in a part is missed where it is used; a list made too short or a
              // range turned over is seen at its partner.
              if (!refusal.where().startsWith(path) && !PARTNERS.contains(path)) {
                mistaken.add(tried + " was refused at " + refusal.where());
              }
            }
          });
    }
    assertThat(mistaken).isEmpty();
  }

  private static final List<String> PARTNERS =
      List.of(
          "parts",
          "parts[0].player",
          "parts[0].attackSteps",
          "parts[0].attackSteps[0]",
          "parts[0].attackSteps[1]",
          "parts[0].attackSteps[2]",
          "parts[0].away[0].fromMicros",
          "clickInterrupted[0].fromMicros",
          "stages[0].beats",
          "stages[0].beats[0]",
          "stages[1].steps",
          "stages[1].everyBars",
          "stages[0].bars",
          "stages[1].bars",
          "stepsPerBeat",
          "meter",
          "swing",
          "tempo.from",
          "tempo.to",
          "chairs[0].cell.steps",
          "chairs[0].cell.attackSteps",
          "chairs[0].cell.attackSteps[0]",
          "chairs[0].cell.attackSteps[1]",
          "chairs[0].cell.lengthSteps",
          "periodBars");

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      textBlock =
          """
          # numbers as strings, fractions where whole numbers stand
          "tempo": 132.0          ~ "tempo": "132.0"          ~ tempo: expected a number, found "132.0"
          "bars": 8               ~ "bars": "8"               ~ stages[0].bars: expected a whole number, found "8"
          "micros": 3681234       ~ "micros": 3681234.5       ~ attacks[0].micros: expected a whole number, found 3681234.5
          "velocity": 96          ~ "velocity": true          ~ attacks[0].velocity: expected a whole number, found true
          "standIn": true         ~ "standIn": "true"         ~ parts[0].standIn: expected true or false, found true
          "title": "Whole"        ~ "title": 7                ~ title: expected a text, found 7
          # values out of range
          "tempo": 132.0          ~ "tempo": 29.9             ~ tempo: expected 30 to 320, found 29.9
          "velocity": 96          ~ "velocity": 0             ~ attacks[0].velocity: expected 1 to 127, found 0
          "pitch": 60             ~ "pitch": 128              ~ attacks[0].pitch: expected 0 to 127, found 128
          "startMicros": 3000000  ~ "startMicros": -1         ~ startMicros: expected 0 to 9007199254740991, found -1
          "swing": "band"         ~ "swing": 0.5              ~ swing: expected 1 to 4, found 0.5
          "weight": 0.5           ~ "weight": -1              ~ parts[0].weight: expected 0 to 10, found -1
          # music that does not fit
          "meter": "4/4"          ~ "meter": "8/4"            ~ meter: expected 2/4, 3/4, 4/4, 5/4, 6/4, 7/4, 6/8, 9/8 or 12/8, found 8/4
          "meter": "4/4"          ~ "meter": 4                ~ meter: expected 2/4, 3/4, 4/4, 5/4, 6/4, 7/4, 6/8, 9/8 or 12/8, found 4
          "meter": "4/4"          ~ "meter": "6/8"            ~ stepsPerBeat: expected 3 or 6 in 6/8, found 2
          "stepsPerBeat": 2       ~ "stepsPerBeat": 3         ~ swing: expected 1 where a beat has 3 steps, found "band"
          "beats": [1, 2, 3, 4]   ~ "beats": [1, 2, 3, 5]     ~ stages[0].beats[3]: expected a beat from 1 to 4 in 4/4, found 5
          "beats": [1, 2, 3, 4]   ~ "beats": [0, 2]           ~ stages[0].beats[0]: expected 1 to 12, found 0
          "beats": [1, 2, 3, 4]   ~ "beats": [1, 1]           ~ stages[0].beats[1]: expected more than 1, the one before, found 1
          "steps": [8]            ~ "steps": [16]             ~ stages[1].steps[0]: expected a step from 0 to 15 in 2 bars, found 16
          "steps": [8]            ~ "beats": [1], "steps": [8] ~ stages[1]: expected either beats or steps, found both
          # parts
          [3, 6, 9, 12], "accent  ~ [3, 6, 9, 128], "accent   ~ parts[0].attackSteps[3]: expected a step before the end of the stages, 128, found 128
          [3, 6, 9, 12], "accent  ~ [3, 6, 9, 9], "accent     ~ parts[0].attackSteps[3]: expected more than 9, the one before, found 9
          "entryStep": 3          ~ "entryStep": 128          ~ parts[0].entryStep: expected a step before the end of the stages, 128, found 128
          [3, 9]                  ~ [3, 10]                   ~ parts[0].accentSteps[1]: expected one of the attackSteps, found 10
          [2, 2, 3, 1]            ~ [2, 2, 3]                 ~ parts[0].lengthSteps: expected as many as attackSteps, 4, found 3
          [60, 62, 63, 65]        ~ [60, 62, 63, 165]         ~ parts[0].pitches[3]: expected 0 to 127, found 165
          "mode": "asItArrives"   ~ "mode": "loudly"          ~ parts[0].hearing.mode: expected one of notAtAll, asItArrives, inTime, found "loudly"
          "toMicros": 5000000     ~ "toMicros": 3000000       ~ parts[0].away[0].toMicros: expected at least fromMicros, 4000000, found 3000000
          # players nobody knows, fields nobody knows, fields left out or twice
          "Ana", "micros": -5     ~ "Zoe", "micros": -5       ~ attacks[1].player: expected a player with a part, found "Zoe"
          "Ana", "micros": -5     ~ "", "micros": -5          ~ attacks[1].player: expected a player with a part, found ""
          "hearing"               ~ "hears"                   ~ parts[0].hears: unknown field; expected one of accentSteps, answers, attackSteps, away, entryStep, feelMillis, figure, free, hearing, instrument, lengthSteps, level, pitches, player, role, standIn, uncertaintyMillis, weight
          "tempo": 132.0,         ~ ``                        ~ tempo: expected a number, found none
          "micros": 3681234,      ~ ``                        ~ attacks[0].micros: expected a whole number, found none
          "title": "Whole"        ~ "title": "Whole", "title": "Twice" ~ byte 68: expected each field once, found "title" again
          # another format, a newer version
          thinclick.take          ~ thinclick.drill           ~ format: expected "thinclick.take", found "thinclick.drill"
          "version": 1            ~ "version": 2              ~ version: expected at most 1, found 2; a newer Thinclick wrote this file
          "version": 1            ~ "version": 99999999999999999999 ~ version: expected at most 1, found 99999999999999999999; a newer Thinclick wrote this file
          "version": 1            ~ "version": 0              ~ version: expected at least 1, found 0
          "version": 1            ~ "version": "1"            ~ version: expected a whole number, found "1"
          # not JSON
          "tempo": 132.0          ~ "tempo": 132.0 "x"        ~ byte 92: expected a comma or }, found "
          "tempo": 132.0          ~ "tempo": NaN              ~ byte 89: expected a value, found NaN
          "tempo": 132.0          ~ "tempo": 0132             ~ byte 87: expected a number, found a leading 0
          "title": "Whole"        ~ title: "Whole"            ~ byte 43: expected a field's name in double quotes, found t
          """)
  void aWrongTakeIsRefusedInOneLine(String from, String to, String says) {
    String whole = Resource.text(Kind.TAKE.example);
    assertThat(whole).contains(from);

    String spoilt = whole.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to));
    assertThat(refusal(Kind.TAKE, spoilt.getBytes(StandardCharsets.UTF_8), to)).hasMessage(says);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      textBlock =
          """
          "level": 6         ~ "level": 11       ~ level: expected 1 to 10, found 11
          "bars": 8          ~ "bars": 8 9       ~ line 3, column 24: expected a comma or }, found 9
          "start": 100       ~ "start": 60       ~ tempo.start: expected 70 to 200, found 60
          "to": 200          ~ "to": 60          ~ tempo.to: expected 70 to 320, found 60
          "kind": "canon"    ~ "kind": "fugue"   ~ deal.kind: expected one of asWritten, unison, canon, hocket, layers, callAndAnswer, trading, roles, found "fugue"
          "steps": 32        ~ "steps": 6        ~ chairs[0].cell.attackSteps[2]: expected 0 to 5, found 6
          "chairs": [        ~ "seats": [        ~ chairs: expected a value, found none
          [2, 2, 2]          ~ [2, 2]            ~ chairs[0].cell.lengthSteps: expected a list of 3 to 3, found one of 2
          """)
  void aWrongDrillIsRefusedInOneLine(String from, String to, String says) {
    String whole = Resource.text(Kind.DRILL.example);
    assertThat(whole).contains(from);

    byte[] spoilt = whole.replace(from, to).getBytes(StandardCharsets.UTF_8);
    assertThat(refusal(Kind.DRILL, spoilt, to)).hasMessage(says);
  }

  @ParameterizedTest
  @ValueSource(strings = {"[]", "1", "null", "\"take\"", "true"})
  void whatIsNoObjectIsRefusedAtItsFirstByte(String json) {
    assertThat(refusal(Kind.TAKE, json.getBytes(StandardCharsets.UTF_8), json).getMessage())
        .startsWith("byte 0: expected an object, found ");
  }

  @Test
  void depthDigitsAndLengthAreBounded() {
    assertThat(refusal(Kind.TAKE, "[".repeat(100_000).getBytes(StandardCharsets.UTF_8), "deep"))
        .hasMessageEndingWith("expected at most 16 levels of brackets, found 17");
    assertThat(
            refusal(
                Kind.TAKE,
                ("{\"a\": " + "1".repeat(21)).getBytes(StandardCharsets.UTF_8),
                "digits"))
        .hasMessageEndingWith("expected at most 20 digits, found 21");
    assertThat(
            refusal(
                    Kind.TAKE,
                    ("{\"a\": \"" + "x".repeat(5_000) + "\"}").getBytes(StandardCharsets.UTF_8),
                    "text")
                .getMessage())
        .contains("expected at most 4096 characters, found ");
  }

  @Test
  void whatWasFoundCannotPaintTheTerminalOrFillIt() {
    String hostile = "\\u001b[31m\\r\\n\\u202e" + "x".repeat(3_000);
    String file =
        Resource.text(Kind.TAKE.example)
            .replace("\"Ana\", \"micros\": -5", "\"" + hostile + "\", \"micros\": -5");

    String line = refusal(Kind.TAKE, file.getBytes(StandardCharsets.UTF_8), "hostile").getMessage();
    assertThat(line).contains("\\u001b[31m\\u000d\\u000a\\u202exxx").hasSizeLessThan(600);
  }

  private static int readOrRefused(Kind kind, byte[] file, String tried) {
    Throwable thrown = catchThrowable(() -> kind.reading.apply(file));
    if (thrown == null) {
      return 0;
    }
    asOneLine(thrown, tried);
    return 1;
  }

  private static BadInput refusal(Kind kind, byte[] file, String tried) {
    Throwable thrown = catchThrowable(() -> kind.reading.apply(file));
    assertThat(thrown).as(tried).isNotNull();
    return asOneLine(thrown, tried);
  }

  private static BadInput asOneLine(Throwable thrown, String tried) {
    assertThat(thrown).as(tried).isInstanceOf(BadInput.class);
    BadInput refusal = (BadInput) thrown;
    assertThat(refusal.where()).as(tried).isNotEmpty();
    assertThat(refusal.says()).as(tried).contains("expected ");
    assertThat(refusal.says()).as(tried).containsAnyOf("found ", "unknown field");
    assertThat(refusal.getMessage().codePoints().anyMatch(Character::isISOControl))
        .as(tried)
        .isFalse();
    return refusal;
  }

  private static void eachValue(
      JsonNode node, String path, JsonNode instead, Consumer<String> trying) {
    if (node instanceof ObjectNode object) {
      for (String name : List.copyOf(object.propertyNames())) {
        String at = path.isEmpty() ? name : path + "." + name;
        JsonNode was = object.get(name);
        object.set(name, instead);
        trying.accept(at);
        object.set(name, was);
        eachValue(was, at, instead, trying);
      }
    }
    if (node instanceof ArrayNode list) {
      for (int i = 0; i < list.size(); i++) {
        String at = path + "[" + i + "]";
        JsonNode was = list.get(i);
        list.set(i, instead);
        trying.accept(at);
        list.set(i, was);
        eachValue(was, at, instead, trying);
      }
    }
  }
}

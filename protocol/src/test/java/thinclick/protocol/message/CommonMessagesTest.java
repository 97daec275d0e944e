package thinclick.protocol.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews.Heard;
import thinclick.protocol.message.TakeNews.HeardAttack;

/**
 * The two messages that come by the thousand have a reader and a writer of their own. The general
 * ones, which every other message goes through, say what is right.
 */
class CommonMessagesTest {
  private static final int SEED = 11;
  private static final String SIGNS = "0123456789-+.eE,:;{}[]\"\\/ \n\u0000\u00e9abtrue";

  private final Random random = new Random(SEED);

  private Attacks attacks() {
    List<WireAttack> attacks = new ArrayList<>();
    for (int i = 1 + random.nextInt(3); i > 0; i--) {
      attacks.add(
          new WireAttack(
              random.nextInt(4) == 0 ? 0 : random.nextLong(1_000_000_000_000_000L),
              random.nextBoolean() ? (Long) random.nextLong(1_000_000_000_000L) : null,
              random.nextBoolean() ? (Integer) (1 + random.nextInt(127)) : null,
              random.nextBoolean() ? (Integer) random.nextInt(128) : null,
              null,
              null,
              random.nextInt(4) == 0));
    }
    return new Attacks(
        "room-t" + random.nextInt(100), random.nextInt(3), 1 + random.nextInt(1_000), attacks);
  }

  /** One sign left out, put in or changed, or a piece said twice. */
  private String spoiled(String text) {
    int at = random.nextInt(text.length());
    char sign = SIGNS.charAt(random.nextInt(SIGNS.length()));
    return switch (random.nextInt(4)) {
      case 0 -> text.substring(0, at) + text.substring(at + 1);
      case 1 -> text.substring(0, at) + sign + text.substring(at);
      case 2 -> text.substring(0, at) + sign + text.substring(at + 1);
      default -> text.substring(0, at) + text.substring(random.nextInt(at + 1));
    };
  }

  @Test
  void attacksAsThinclickWritesThemAreReadAtAGlance() {
    for (int i = 0; i < 1_000; i++) {
      Attacks sent = attacks();

      assertThat(AtAGlance.attacks(MessageCodec.write(sent))).as("seed " + SEED).isEqualTo(sent);
    }
  }

  @Test
  void whatIsReadAtAGlanceTheStrictReaderReadsTheSame() {
    int glanced = 0;
    for (int i = 0; i < 30_000; i++) {
      String text = spoiled(MessageCodec.write(attacks()));
      Attacks read = AtAGlance.attacks(text);
      if (read != null) {
        glanced++;
        assertThat(MessageCodec.readStrictly(text)).as("seed %s: %s", SEED, text).isEqualTo(read);
      }
    }
    assertThat(glanced).isBetween(3_000, 27_000);
  }

  @Test
  void edgesOfWhatIsAllowedAreTheStrictReadersToDecide() {
    String one = "{\"type\":\"attacks\",\"takeId\":\"%s\",\"epoch\":%s,\"firstSeq\":%s,%s}";
    String played = "\"attacks\":[{\"micros\":1}]";
    String many = "\"attacks\":[" + "{\"micros\":1},".repeat(64) + "{\"micros\":1}]";

    assertThat(AtAGlance.attacks(one.formatted("t".repeat(32), "0", "1", played))).isNotNull();
    assertThat(AtAGlance.attacks(one.formatted("t".repeat(33), "0", "1", played))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("", "0", "1", played))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("t\\u0031", "0", "1", played))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("t", "00", "1", played))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("t", "0", "0", played))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("t", "0", "1234567890123456", played))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("t", "0", "1", "\"attacks\":[]"))).isNull();
    assertThat(AtAGlance.attacks(one.formatted("t", "0", "1", many))).isNull();
    assertThat(
            AtAGlance.attacks(
                one.formatted("t", "0", "1", "\"attacks\":[{\"micros\":1,\"velocity\":128}]")))
        .isNull();
  }

  @Test
  void heardIsWrittenAsTheGeneralWriterWritesIt() {
    for (int i = 0; i < 3_000; i++) {
      Heard heard = heard();

      assertThat(MessageCodec.writeBytes(heard))
          .as("seed " + SEED)
          .isEqualTo(MessageCodec.writeByFields(heard));
    }
  }

  private Heard heard() {
    List<HeardAttack> items = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      items.add(
          new HeardAttack(
              random.nextInt(20) == 0 ? "a\u00e9\"" + SIGNS : "room-p" + random.nextInt(9),
              random.nextLong(1_000),
              random.nextLong(1_000_000_000_000L),
              random.nextBoolean() ? (Double) (random.nextGaussian() * Math.pow(10, i * 4)) : null,
              random.nextBoolean() ? "early" : null,
              random.nextBoolean()));
    }
    return new Heard("room-t1", items);
  }
}

package thinclick.protocol.invite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.json.BadInput;

class JoinLinkTest {
  private static final Fingerprint PIN =
      Fingerprint.of("a certificate".getBytes(StandardCharsets.US_ASCII));

  @Test
  void fingerprintIsTheDigestInBase64url() {
    // FIPS 180-4, the published digest of "abc", ba7816bf 8f01cfea 414140de 5dae2223 b00361a3
    // 96177a9c b410ff61 f20015ad.
    Fingerprint abc = Fingerprint.of("abc".getBytes(StandardCharsets.US_ASCII));

    assertThat(abc.text()).isEqualTo("ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0");
    assertThat(abc.said()).isEqualTo("ba78-16bf-8f01-cfea");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa",
        "ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0",
        "ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa1"
      })
  void whatIsNoFingerprintIsRefused(String text) {
    assertThatThrownBy(() -> new Fingerprint(text)).isInstanceOf(BadInput.class);
  }

  @Test
  void everyKindOfLinkIsReadBackAsItWasWritten() {
    Random random = new Random(20);
    List<String> hosts =
        List.of("192.168.1.20", "band-room.local", "fe80::1:2", "::1", "a", "rehearse.example");
    for (int i = 0; i < 500; i++) {
      boolean plain = random.nextInt(3) == 0;
      JoinLink link =
          new JoinLink(
              hosts.get(random.nextInt(hosts.size())),
              1 + random.nextInt(65_535),
              random.nextBoolean() ? "kodamine" : null,
              plain || random.nextBoolean() ? null : PIN,
              plain);

      assertThat(JoinLink.parse(link.toString())).as("case %d of seed 20", i).isEqualTo(link);
    }
  }

  @Test
  void spacesCapitalsAndHyphensOfAWordDoNotMatter() {
    assertThat(JoinLink.parse("  THINCLICK://192.168.1.20:7420/Koda-Mine?pin=" + PIN + "\n"))
        .isEqualTo(new JoinLink("192.168.1.20", 7420, "kodamine", PIN, false));
  }

  @Test
  void whatALaterHostSaysMoreIsIgnored() {
    assertThat(JoinLink.parse("thinclick://h:1/ba?voice=2&pin=" + PIN + "&x"))
        .isEqualTo(new JoinLink("h", 1, "ba", PIN, false));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "http://192.168.1.20:7420/kodamine             | expected a join link",
        "thinclick://192.168.1.20/kodamine             | expected a join link",
        "thinclick://user@192.168.1.20:7420/kodamine   | expected a join link",
        "thinclick://192.168.1.20:7420/koda/mine       | expected a join link",
        "thinclick://192.168.1.20:7420/koda%20mine     | expected a join link",
        "thinclick://192.168.1.20:0/kodamine           | port: expected 1 to 65535, found 0",
        "thinclick://192.168.1.20:70000/kodamine       | port: expected 1 to 65535, found 70000",
        "thinclick://192.168.1.20:7420/kodamine?pin=ab | pin: expected 43 letters",
        "thinclick://h:1/?plain&pin=ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0 | plain: expected",
        "thinclick://h:1/?pin=ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0"
            + "&pin=ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0 | expected one pin"
      })
  void wrongLinkIsRefusedWithItsReason(String text, String says) {
    assertThatThrownBy(() -> JoinLink.parse(text))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(says);
  }
}

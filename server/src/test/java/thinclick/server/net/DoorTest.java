package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DoorTest {
  @ParameterizedTest
  @CsvSource({
    "127.0.0.1, 4", // this computer
    "192.168.1.20, 4", // a network of one house, RFC 1918
    "10.1.2.3, 4",
    "fd00::1, 4", // the same in version 6, RFC 4193
    "fe80::1, 4",
    "192.0.2.1, 6", // for documentation, RFC 5737: public like any other
    "2001:db8::1, 6"
  })
  void wordsAreLongerWhereStrangersCanTryThem(String address, int syllables) throws Exception {
    assertThat(Door.of(InetAddress.getByName(address), null).syllables()).isEqualTo(syllables);
  }

  @ParameterizedTest
  @CsvSource({
    "127.0.0.1, , , true",
    "192.168.1.20, , , false",
    "192.168.1.20, secret-of-hosts, , false",
    "192.168.1.20, secret-of-hosts, guessed, false",
    "192.168.1.20, secret-of-hosts, secret-of-hosts, true"
  })
  void roomsAreOpenedHereOrWithTheKey(String from, String key, String shown, boolean opens)
      throws Exception {
    assertThat(new Door(key, 4).opensTo(InetAddress.getByName(from), shown)).isEqualTo(opens);
  }

  @Nested
  class Limits {
    private static final long SECOND = 1_000_000_000L;

    @Test
    void allowanceComesBackWithTime() {
      Allowance allowance = new Allowance(2, 4, 0);
      assertThat(allowance.take(4, 0)).isTrue();
      assertThat(allowance.take(1, SECOND / 4)).isFalse();
      assertThat(allowance.take(1, SECOND / 2)).isTrue();
      assertThat(allowance.take(5, 100 * SECOND)).isFalse();
      assertThat(allowance.take(4, 100 * SECOND)).isTrue();
    }

    @Test
    void threeRoomsAMinuteAnAddressAndAsManyAsItLikesHere() throws Exception {
      Strangers strangers = new Strangers(0);
      InetAddress far = InetAddress.getByName("192.0.2.1");
      InetAddress other = InetAddress.getByName("192.0.2.2");
      for (int i = 0; i < 3; i++) {
        assertThat(strangers.mayMakeRoom(far, 0)).isTrue();
      }
      assertThat(strangers.mayMakeRoom(far, 0)).isFalse();
      assertThat(strangers.mayMakeRoom(other, 0)).isTrue();
      assertThat(strangers.mayMakeRoom(far, 20 * SECOND)).isTrue();
      for (int i = 0; i < 100; i++) {
        assertThat(strangers.mayMakeRoom(InetAddress.getLoopbackAddress(), 0)).isTrue();
      }
    }

    @Test
    void handshakesAreRationedForOthersOnly() throws Exception {
      Strangers strangers = new Strangers(0);
      InetAddress there = InetAddress.getByName("198.51.100.7");
      InetAddress elsewhere = InetAddress.getByName("198.51.100.8");
      for (int i = 0; i < 100; i++) {
        assertThat(strangers.mayShakeHands(there, 0)).as("handshake %d", i).isTrue();
      }

      assertThat(strangers.mayShakeHands(there, 0)).isFalse();
      assertThat(strangers.mayShakeHands(elsewhere, 0)).isTrue();
      assertThat(strangers.mayShakeHands(there, 1_000_000_000L)).isTrue();
      for (int i = 0; i < 1_000; i++) {
        assertThat(strangers.mayShakeHands(InetAddress.getLoopbackAddress(), 0)).isTrue();
      }
    }

    @Test
    void whoeverIsRefusedBecauseOfAllOthersLosesNothingOfTheirOwn() throws Exception {
      Strangers strangers = new Strangers(0);
      for (int i = 0; i < 400; i++) {
        InetAddress crowd = InetAddress.getByAddress(new byte[] {10, 0, (byte) (i >> 8), (byte) i});
        assertThat(strangers.mayShakeHands(crowd, 0)).isTrue();
      }
      InetAddress school = InetAddress.getByName("198.51.100.7");
      for (int i = 0; i < 1_000; i++) {
        assertThat(strangers.mayShakeHands(school, 0)).isFalse();
      }

      for (int i = 0; i < 100; i++) {
        assertThat(strangers.mayShakeHands(school, SECOND)).as("handshake %d", i).isTrue();
      }
    }

    @Test
    void twoHundredWrongWordsAMinuteOverallAndRightOnesCostNothing() throws Exception {
      Strangers strangers = new Strangers(0);
      int tried = 0;
      for (int i = 0; i < 300; i++) {
        InetAddress from =
            InetAddress.getByAddress(new byte[] {(byte) 192, 0, 2, (byte) (i % 100)});
        if (strangers.mayTryWord(from, 0)) {
          tried++;
          strangers.wordWasWrong(from, 0);
        }
      }
      assertThat(tried).isEqualTo(200);

      Strangers kind = new Strangers(0);
      InetAddress here = InetAddress.getByName("192.0.2.1");
      for (int i = 0; i < 300; i++) {
        assertThat(kind.mayTryWord(here, 0)).isTrue();
      }
    }

    @Test
    void addressThatGuessedTwentyTimesWaitsThreeSecondsForEachMore() throws Exception {
      Strangers strangers = new Strangers(0);
      InetAddress guesser = InetAddress.getByName("192.0.2.1");
      for (int i = 0; i < 20; i++) {
        assertThat(strangers.mayTryWord(guesser, 0)).isTrue();
        strangers.wordWasWrong(guesser, 0);
      }

      assertThat(strangers.mayTryWord(guesser, 0)).isFalse();
      assertThat(strangers.mayTryWord(InetAddress.getByName("192.0.2.2"), 0)).isTrue();
      assertThat(strangers.mayTryWord(guesser, 2 * SECOND)).isFalse();
      assertThat(strangers.mayTryWord(guesser, 3 * SECOND + 1)).isTrue();
    }

    @Test
    void noMoreThanTenThousandAddressesAreRemembered() throws Exception {
      Strangers strangers = new Strangers(0);
      for (int i = 0; i < 12_000; i++) {
        InetAddress from = InetAddress.getByAddress(new byte[] {10, 0, (byte) (i >> 8), (byte) i});
        strangers.wordWasWrong(from, 0);
        strangers.mayMakeRoom(from, 0);
        strangers.mayShakeHands(from, 0);
      }

      int shookHands = 400; // all together at once; whoever is refused is not remembered for it
      assertThat(strangers.remembered()).isEqualTo(2 * 10_000 + shookHands);
    }
  }
}

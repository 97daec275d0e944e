package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** One a second, two at once, three remembered; by a clock that the test moves. */
class AllowancesTest {
  private static final long SECOND = 1_000_000_000L;

  private final Allowances<String> allowances = new Allowances<>(1, 2, 3);

  private void takeAll(String key, long nowNanos) {
    assertThat(allowances.take(key, nowNanos)).isTrue();
    assertThat(allowances.take(key, nowNanos)).isTrue();
    assertThat(allowances.take(key, nowNanos)).isFalse();
  }

  @Test
  void eachHasTheirOwnAndItComesBack() {
    takeAll("mina", 0);
    takeAll("jonas", 0);

    assertThat(allowances.take("mina", SECOND - 1)).isFalse();
    assertThat(allowances.take("mina", SECOND)).isTrue();
    assertThat(allowances.full("mina", 2 * SECOND)).isFalse();
    assertThat(allowances.full("mina", 3 * SECOND)).isTrue();
  }

  @Test
  void whoeverOnlyAsksIsNotRemembered() {
    assertThat(allowances.has("mina", 0)).isTrue();
    assertThat(allowances.full("jonas", 0)).isTrue();

    assertThat(allowances.size()).isZero();
  }

  @Test
  void whoeverOwesNothingIsForgottenBeforeTheOldest() {
    takeAll("oldest", 0);
    allowances.take("paid", 0);
    takeAll("third", 0);
    allowances.take("fourth", SECOND);

    assertThat(allowances.size()).isEqualTo(3);
    assertThat(allowances.take("oldest", SECOND)).isTrue();
    assertThat(allowances.take("oldest", SECOND)).as("remembered").isFalse();
  }

  @Test
  void whereAllOweSomethingTheOldestIsForgotten() {
    takeAll("oldest", 0);
    takeAll("second", 0);
    takeAll("third", 0);
    allowances.take("fourth", 0);

    assertThat(allowances.size()).isEqualTo(3);
    assertThat(allowances.has("second", 0)).isFalse();
    assertThat(allowances.has("oldest", 0)).as("forgotten").isTrue();
  }
}

package thinclick.client.window.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class MemberListTest {
  @Test
  void aDaySaysItsYearOnlyWhereAnotherCouldBeMeant() {
    Instant autumn = Instant.parse("2026-09-22T10:00:00Z");
    Instant summer = Instant.parse("2027-06-22T10:00:00Z");
    Instant nextAutumn = Instant.parse("2027-09-22T10:00:00Z");

    assertThat(MemberList.withYear(List.of())).isFalse();
    assertThat(MemberList.withYear(List.of(summer, autumn))).isFalse();
    assertThat(MemberList.withYear(List.of(nextAutumn, summer, autumn))).isTrue();
  }
}

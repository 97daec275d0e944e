package thinclick.protocol.invite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.json.BadInput;

class HostNoticeTest {
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void noticeIsReadBackAsItWasSaid(boolean plain) {
    HostNotice said = new HostNotice("Band room", "192.168.1.20", 7420, plain);

    assertThat(
            HostNotice.of(
                said.name(), said.host(), said.port(), said.text().get(HostNotice.lineKey())))
        .isEqualTo(said);
  }

  @Test
  void noticeLetsNobodyInAndVouchesForNothing() {
    HostNotice said = new HostNotice("Band room", "192.168.1.20", 7420, false);

    assertThat(said.link()).hasToString("thinclick://192.168.1.20:7420/");
    assertThat(said.text()).containsOnlyKeys("v", "line");
  }

  @Test
  void whatCannotBeUnderstoodIsRefused() {
    assertThatThrownBy(() -> HostNotice.of("Band room", "192.168.1.20", 7420, null))
        .isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> HostNotice.of("", "192.168.1.20", 7420, "plain"))
        .isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> HostNotice.of("a\u0007b", "192.168.1.20", 7420, "plain"))
        .isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> HostNotice.of("Band room", "192.168.1.20", 0, "plain"))
        .isInstanceOf(BadInput.class);
  }
}

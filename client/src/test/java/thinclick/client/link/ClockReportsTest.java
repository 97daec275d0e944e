package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.AnswerMessage.ClockAnswer;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.PreparingMessage.Clock;
import thinclick.protocol.message.PreparingMessage.ClockReport;

/** How well the clock is known is said of the room's own epoch, and of no other. */
class ClockReportsTest {
  private final List<ClientMessage> sent = new ArrayList<>();

  @Test
  void anAnswerThatCameTooLateIsNoReasonToReport() {
    try (LinkLoop loop = LinkLoop.start()) {
      ClockExchanges clock = new ClockExchanges(loop, 1, sent::add, view -> {}, slept -> {}, null);
      clock.online(2);
      long asked = ((Clock) sent.get(0)).id();
      clock.answered(new ClockAnswer(asked + 99, 0, 10, 11, 2), loop.nanos()); // given up long ago
      assertThat(reports()).isEmpty();
      clock.answered(new ClockAnswer(asked, 0, 10, 11, 2), loop.nanos());
      assertThat(reports()).extracting(ClockReport::epoch).containsExactly(2L);
    }
  }

  private List<ClockReport> reports() {
    return sent.stream()
        .filter(ClockReport.class::isInstance)
        .map(ClockReport.class::cast)
        .toList();
  }
}

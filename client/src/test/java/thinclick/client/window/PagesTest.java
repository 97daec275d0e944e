package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Rooms;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** Which page comes into view by itself, from the states of a room. */
class PagesTest {
  private static final Take TAKE =
      Rooms.take(Meter.FOUR_FOUR, 2, List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4)));

  private final RoomState gathering = Rooms.gathering();
  private final RoomState dealt = Rooms.dealt(TAKE);
  private final RoomState playing = Rooms.playing(TAKE);
  private final RoomState reviewed = Rooms.reviewed(TAKE);

  @Test
  void oneComesInToTheStandOrToTheLecternAndLeavesToTheDoor() {
    RoomState outside = RoomState.OUTSIDE;
    assertThat(Pages.next(View.DOOR, outside, gathering, false)).isEqualTo(View.LECTERN);
    assertThat(Pages.next(View.PRACTICE, outside, gathering, true)).isEqualTo(View.STAND);
    assertThat(Pages.next(View.DOOR, outside, Rooms.notLed(gathering), false))
        .isEqualTo(View.STAND);
    assertThat(Pages.next(View.REVIEW, reviewed, outside, false)).isEqualTo(View.DOOR);
  }

  @Test
  void aTakeIsAtTheStandAndThenItsReview() {
    assertThat(Pages.next(View.LECTERN, dealt, playing, false)).isEqualTo(View.STAND);
    assertThat(Pages.next(View.LECTERN, playing, reviewed, false)).isEqualTo(View.REVIEW);
  }

  @Test
  void aDealBringsFromTheReviewThatIsGoneToWhereOneIsOfUse() {
    assertThat(Pages.next(View.REVIEW, reviewed, dealt, false)).isEqualTo(View.LECTERN);
    assertThat(Pages.next(View.REVIEW, reviewed, dealt, true)).isEqualTo(View.STAND);
    assertThat(Pages.next(View.REVIEW, Rooms.notLed(reviewed), Rooms.notLed(dealt), false))
        .isEqualTo(View.STAND);
  }

  @ParameterizedTest
  @EnumSource(names = {"CHECK", "STAND", "LECTERN", "SEASON", "SETTINGS", "HELP"})
  void aDealLeavesEveryOtherPageInView(View page) {
    assertThat(Pages.next(page, reviewed, dealt, false)).isNull();
  }

  @Test
  void theDigitsFollowTheOrderOfTheWordsInTheHead() {
    assertThat(Stream.of(View.values()).map(View::digit).filter(digit -> digit > 0))
        .isSorted()
        .doesNotHaveDuplicates();
  }

  @Test
  void whoPassesTheLeadDoesNotStayAtALecternThatIsNotTheirs() {
    RoomState passed = Rooms.notLed(gathering);
    assertThat(Pages.next(View.LECTERN, gathering, passed, false)).isEqualTo(View.STAND);
    assertThat(Pages.next(View.SETTINGS, gathering, passed, false)).isNull();
  }
}

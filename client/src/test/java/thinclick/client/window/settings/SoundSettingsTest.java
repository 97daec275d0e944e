package thinclick.client.window.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.check.Verdict.How;
import thinclick.client.sound.CountIn;
import thinclick.client.window.settings.SoundSettings.Chair;
import thinclick.protocol.file.Hearing;

class SoundSettingsTest {
  private static final Chair PAD_ON_SPEAKERS = new Chair("speakers", "pad", How.TAPS, 31, 6, 36);
  private static final Chair KEYS_ON_SPEAKERS =
      new Chair("speakers", "keys", How.MICROPHONE, 48, 3, 12);

  @TempDir Path folder;

  @Test
  void anOutputNeverUsedOpensSoftly() {
    assertThat(SoundSettings.FIRST.opening("speakers").dbfs()).isEqualTo(-24);
  }

  @Test
  void aLoudLevelIsRememberedButNotOpenedWith() {
    SoundSettings loud = SoundSettings.FIRST.withLevel("speakers", -6).withLevel("headset", -30);
    assertThat(loud.opening("speakers").dbfs()).isEqualTo(-12);
    assertThat(loud.opening("headset").dbfs()).isEqualTo(-30);
    assertThat(loud.opening("another").dbfs()).as("a new device").isEqualTo(-24);
  }

  @Test
  void whatWasMeasuredHoldsForItsOutputAndItsInputTogether() {
    SoundSettings both = SoundSettings.FIRST.withChair(PAD_ON_SPEAKERS).withChair(KEYS_ON_SPEAKERS);
    assertThat(both.chair("speakers", "pad")).contains(PAD_ON_SPEAKERS);
    assertThat(both.chair("speakers", "keys")).contains(KEYS_ON_SPEAKERS);
    assertThat(both.chair("headset", "keys")).isEmpty();
    assertThat(both.withoutChair("speakers", "pad").chair("speakers", "pad")).isEmpty();
  }

  @Test
  void aNewMeasureTakesThePlaceOfTheOld() {
    Chair again = new Chair("speakers", "pad", How.TAPS, 35, 5, 34);
    SoundSettings settings = SoundSettings.FIRST.withChair(PAD_ON_SPEAKERS).withChair(again);
    assertThat(settings.chairs()).containsExactly(again);
  }

  @Test
  void itIsReadBackAsItWasWritten() {
    SoundSettings settings =
        SoundSettings.FIRST
            .choosing("speakers", true, Hearing.Mode.IN_TIME)
            .counting(CountIn.SPOKEN)
            .withLevel("speakers", -20)
            .withChair(KEYS_ON_SPEAKERS);
    SoundSettings.file(folder).write(settings);
    assertThat(SoundSettings.file(folder).read().value()).isEqualTo(settings);
  }

  /** A file of before the count-in could be spoken. */
  @Test
  void whereNothingWasChosenTheCountInIsClicked() throws IOException {
    Files.writeString(
        folder.resolve(SoundSettings.NAME),
        """
        {"format":"thinclick.sound","version":1,"output":"","silentHere":false,"hearing":null,
         "levels":[],"chairs":[]}
        """);
    assertThat(SoundSettings.file(folder).read().value().countsIn()).isEqualTo(CountIn.CLICKED);
    assertThat(SoundSettings.file(folder).read().putAside()).isEmpty();
  }
}

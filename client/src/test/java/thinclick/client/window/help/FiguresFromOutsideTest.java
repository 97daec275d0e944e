package thinclick.client.window.help;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.client.window.words.Words;

/** Figures of other people's that the window tells, read from its texts in each language. */
class FiguresFromOutsideTest {
  private static final Map<String, Integer> HOURS = Map.of("eight", 8, "acht", 8);

  /** So many dB for so many hours, and by how many dB more it is half the time. */
  private static final Map<String, Pattern> WORK =
      Map.of(
          "en",
          Pattern.compile(
              "(\\d+) dB\\(A\\) for (\\w+) hours, and half the time for every (\\d+) dB more"),
          "de",
          Pattern.compile(
              "(\\d+) dB\\(A\\) für (\\w+) Stunden und für je (\\d+) dB mehr die halbe"));

  /** So many dB for so many hours a week for adults, so many for children. */
  private static final Map<String, Pattern> LISTENING =
      Map.of(
          "en",
          Pattern.compile(
              "(\\d+) dB\\(A\\) for (\\d+) hours a week for adults and (\\d+) dB\\(A\\) for children"),
          "de",
          Pattern.compile(
              "(\\d+) dB\\(A\\) für (\\d+) Stunden in der Woche für Erwachsene"
                  + " und (\\d+) dB\\(A\\) für Kinder"));

  private static final Map<String, Pattern> SOUND =
      Map.of(
          "en", Pattern.compile("sound takes ([0-9.]+)\u00a0ms a metre"),
          "de", Pattern.compile("der Schall ([0-9,]+)\u00a0ms je Meter"));

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void loudnessAtWorkGivesTheTableOfNiosh(String language) {
    MatchResult said = said(WORK, language, help(language));
    double level = Double.parseDouble(said.group(1));
    double minutes = 60.0 * HOURS.get(said.group(2));
    double half = Double.parseDouble(said.group(3));
    // CDC/NIOSH, recommended exposure limit: dB(A) and minutes a day.
    for (int[] row : new int[][] {{85, 480}, {88, 240}, {91, 120}, {94, 60}, {97, 30}, {100, 15}}) {
      assertThat(minutes / Math.pow(2, (row[0] - level) / half))
          .as("%d dB(A)", row[0])
          .isCloseTo(row[1], within(1e-9));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void loudnessOfListeningGivesTheDosesOfTheStandard(String language) {
    MatchResult said = said(LISTENING, language, help(language));
    double hours = Double.parseDouble(said.group(2));
    // ITU-T H.870, 2018: 80 dB(A) for adults, 75 dB(A) for children, 40 hours a week. Its sound
    // doses, 1.6 and 0.51 Pa2h, are from memory, and come out again from 20 micropascals at 0 dB.
    assertThat(List.of(said.group(1), said.group(2), said.group(3)))
        .containsExactly("80", "40", "75");
    assertThat(dose(said.group(1), hours)).isCloseTo(1.6, within(0.005));
    assertThat(dose(said.group(3), hours)).isCloseTo(0.51, within(0.005));
  }

  private static double dose(String decibels, double hours) {
    return Math.pow(20e-6, 2) * Math.pow(10, Double.parseDouble(decibels) / 10) * hours;
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void soundTakesAsLongAMetreAsInAirOfTwentyDegrees(String language) {
    Words words = Words.in(Locale.forLanguageTag(language));
    MatchResult said = said(SOUND, language, words.say("check.sounds.elsewhere"));
    // 331.3 m/s at 0 degrees, with the square root of the temperature: from memory, and again from
    // an ideal gas of 1.4 and 28.96 g/mol, which gives 343.2 m/s.
    double metresASecond = 331.3 * Math.sqrt(1 + 20 / 273.15);
    assertThat(metresASecond)
        .isCloseTo(Math.sqrt(1.4 * 8.314462618 * 293.15 / 0.02896), within(0.1));
    assertThat(Double.parseDouble(said.group(1).replace(',', '.')))
        .isCloseTo(1_000 / metresASecond, within(0.05));
  }

  private static String help(String language) {
    return HelpText.markdown(Locale.forLanguageTag(language));
  }

  private static MatchResult said(Map<String, Pattern> sentences, String language, String text) {
    List<MatchResult> found = sentences.get(language).matcher(text).results().toList();
    assertThat(found).as("%s in %s", sentences.get(language), text).hasSize(1);
    return found.get(0);
  }
}

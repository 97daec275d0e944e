package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Keys and notes are called as players of the language call them. */
class SheetWordsTest {
  private static final SheetWords ENGLISH = SheetWords.in(Locale.ENGLISH);
  private static final SheetWords GERMAN = SheetWords.in(Locale.GERMAN);

  @ParameterizedTest
  @CsvSource({
    "B flat major, B\u266d major, B-Dur",
    "B minor, B minor, H-Moll",
    "E flat dorian, E\u266d dorian, Es dorisch",
    "12-bar blues in F sharp major, 12-bar blues in F\u266f major, 'Blues, zwölf Takte, in Fis-Dur'"
  })
  void aKeyIsPrinted(String key, String english, String german) {
    assertThat(ENGLISH.line(key)).isEqualTo(english);
    assertThat(GERMAN.line(key)).isEqualTo(german);
  }

  @ParameterizedTest
  @CsvSource({"B, H", "B flat, B", "A flat, As", "B double flat, Heses", "F sharp, Fis"})
  void aNoteIsReadOut(String english, String german) {
    assertThat(ENGLISH.note(english)).isEqualTo(english);
    assertThat(GERMAN.note(english)).isEqualTo(german);
  }
}

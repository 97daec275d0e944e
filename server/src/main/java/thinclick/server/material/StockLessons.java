package thinclick.server.material;

import java.util.List;
import thinclick.protocol.file.Lesson;

/** Five lessons, graded; the order of drills and the words are our own. */
final class StockLessons {
  private StockLessons() {}

  static List<Lesson> all() {
    return List.of(
        lesson(
            "First day",
            45,
            item("Even eighths", 2, "Clap it once without the click."),
            item("Bare one", 2, "Leave the one to the click and count it aloud."),
            item("Odds and evens", 2, "Half the room on the beat, half on the ands; then change."),
            item("Charleston", 3, "Say long, short before you play it."),
            item("Ands alone", 3, "Tap the foot on the beat and play when it comes up."),
            item("Call", 2, "Answer exactly as long after the bar line as you were called.")),
        lesson(
            "Off the one",
            45,
            item("Bare one", 1, "Breathe on the one."),
            item("Ands alone", 2, "Softly; listen for the click between your notes."),
            item("Late Charleston", 2, "Hear the one first, then come in behind it."),
            item("Gapped ands", 2, "Keep counting through the gap."),
            item("Push only", 3, "One note a bar, and it belongs to the next one."),
            item("Four-chair canon", 3, "Each comes in a beat after the one before.")),
        lesson(
            "Comping clinic",
            45,
            item("Charleston", 2, "Short notes, together with the ride."),
            item("Two-and four-and", 2, "Answer the beats; do not lean on them."),
            item("Sparse comp", 3, "Four notes in two bars: place them, then leave room."),
            item("Samba seven", 2, "Sing it before you play it."),
            item(
                "Room 12 rhythm section",
                3,
                "Ride and bass are one; comping fills what they leave.")),
        lesson(
            "Two kitchens",
            30,
            item("Even eighths", 1, "Check that each hears the click before anything else."),
            item("Odds and evens", 3, "Do not wait for the other; both follow the click."),
            item("Clave canon", 3, "The second comes in a bar later and stays there."),
            item("Layers over three bars", 2, "You meet on the one after three bars.")),
        lesson(
            "Threes and tails",
            45,
            item("Tresillo", 2, "Count one two three, one two three, one two."),
            item("Short threes", 2, "The last eighth of bar 2 is the odd one out."),
            item("Hollow threes", 2, "Play two, leave one."),
            item("Long threes", 3, "Bar 4 begins the figure anew; say its number on the one."),
            item("Jigsaw", 2, "Three rows, one full bar."),
            item("Split fives", 2, "Three and two, whatever the bar line does.")));
  }

  private static Lesson lesson(String title, int minutes, Lesson.Item... items) {
    return new Lesson(Lesson.FORMAT, Lesson.VERSION, title, minutes, List.of(items));
  }

  private static Lesson.Item item(String drill, int takes, String say) {
    return new Lesson.Item(drill, takes, say);
  }
}

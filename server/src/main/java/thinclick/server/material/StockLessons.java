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
            item("Even eighths", 3, "Clap it once without the click."),
            item("Bare one", 3, "Leave the one to the click and count it aloud."),
            item("Odds and evens", 4, "Half the room on the beat, half on the ands; then change."),
            item("Charleston", 4, "Say long, short before you play it."),
            item("Ands alone", 5, "Tap the foot on the beat and play when it comes up."),
            item("Call", 4, "Answer exactly as long after the bar line as you were called.")),
        lesson(
            "Off the one",
            45,
            item("Bare one", 2, "Breathe on the one."),
            item("Ands alone", 3, "Softly; listen for the click between your notes."),
            item("Late Charleston", 4, "Hear the one first, then come in behind it."),
            item("Gapped ands", 4, "Keep counting through the gap."),
            item("Push only", 5, "One note a bar, and it belongs to the next one."),
            item("Four-chair canon", 4, "Each comes in a beat after the one before.")),
        lesson(
            "Comping clinic",
            45,
            item("Charleston", 4, "Short notes, together with the ride."),
            item("Two-and four-and", 4, "Answer the beats; do not lean on them."),
            item("Sparse comp", 5, "Four notes in two bars: place them, then leave room."),
            item("Samba seven", 4, "Sing it before you play it."),
            item(
                "Room 12 rhythm section",
                5,
                "Ride and bass are one; comping fills what they leave.")),
        lesson(
            "Two kitchens",
            30,
            item("Even eighths", 2, "Check that each hears the click before anything else."),
            item("Odds and evens", 4, "Do not wait for the other; both follow the click."),
            item("Clave canon", 5, "The second comes in a bar later and stays there."),
            item("Layers over three bars", 3, "You meet on the one after three bars.")),
        lesson(
            "Threes and tails",
            45,
            item("Tresillo", 3, "Count one two three, one two three, one two."),
            item("Short threes", 3, "The last eighth of bar 2 is the odd one out."),
            item("Hollow threes", 3, "Play two, leave one."),
            item("Long threes", 5, "Bar 4 begins the rhythm anew; say its number on the one."),
            item("Jigsaw", 4, "Three rows, one full bar."),
            item("Split fives", 4, "Three and two, whatever the bar line does.")));
  }

  private static Lesson lesson(String title, int minutes, Lesson.Item... items) {
    return new Lesson(Lesson.FORMAT, Lesson.VERSION, title, minutes, List.of(items));
  }

  private static Lesson.Item item(String drill, int takes, String say) {
    return new Lesson.Item(drill, takes, say);
  }
}

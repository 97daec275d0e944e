package thinclick.protocol.file;

import java.util.List;
import thinclick.protocol.json.Check;

/**
 * An ordered set of drills for one hour.
 *
 * @param title unique
 * @param minutes how long it lasts, count-ins and talk included
 * @param drills in order
 */
public record Lesson(String format, int version, String title, int minutes, List<Item> drills) {
  /** What {@code format} says. */
  public static final String FORMAT = "thinclick.lesson";

  /** The version this code writes and the newest it reads. */
  public static final int VERSION = 1;

  /**
   * One drill of a lesson.
   *
   * @param drill its title
   * @param takes how often it is run
   * @param say what the leader says before it
   */
  public record Item(String drill, int takes, String say) {
    public Item {
      Check.length("drill", Check.present("drill", drill), 1, 200);
      Check.range("takes", takes, 1L, 20);
      Check.length("say", Check.present("say", say), 0, 500);
    }
  }

  public Lesson {
    Check.length("title", Check.present("title", title), 1, 200);
    Check.range("minutes", minutes, 1L, 240);
    drills = Check.list("drills", drills);
    Check.size("drills", drills, 1, 50);
  }
}

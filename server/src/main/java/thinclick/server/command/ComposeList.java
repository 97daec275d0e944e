package thinclick.server.command;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.Check;
import thinclick.server.folder.MaterialFolder;
import thinclick.server.material.LessonClock;
import thinclick.server.material.Rung;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.material.pitch.Scale;

/** What {@code compose --list} prints. */
final class ComposeList {
  private final MaterialFolder material;
  private final PrintWriter out;

  ComposeList(MaterialFolder material, PrintWriter out) {
    this.material = material;
    this.out = out;
  }

  void print(String what) {
    Map<String, Runnable> lists =
        Map.of(
            "drills", this::drills,
            "lessons", this::lessons,
            "scales", () -> lines(Scale.names()),
            "progressions", this::progressions,
            "instruments", () -> lines(Instrument.all().stream().map(Instrument::name).toList()),
            "plans", this::plans,
            "deals", () -> lines(List.copyOf(RunOptions.ways().keySet())));
    Typed.word("--list", what, lists).run();
  }

  private void lines(List<String> lines) {
    lines.forEach(out::println);
  }

  private void drills() {
    List<Drill> drills = material.drills();
    int width = drills.stream().mapToInt(drill -> drill.title().length()).max().orElse(0);
    String row = "%-" + width + "s  %-5s  %5s  %6s  %s%n";
    out.printf(row, "Title", "Meter", "Level", "Chairs", "Tempo");
    for (Drill drill : drills) {
      out.printf(
          row,
          drill.title(),
          drill.meter(),
          drill.level(),
          drill.chairs().size(),
          Check.number(drill.tempo().from()) + "-" + Check.number(drill.tempo().to()));
    }
  }

  private void lessons() {
    for (Lesson lesson : material.lessons()) {
      out.printf(
          "%s, %d minutes, %d drills (%.0f with count-ins and talk)%n",
          lesson.title(),
          lesson.minutes(),
          lesson.drills().size(),
          LessonClock.minutes(lesson, material::drill));
    }
  }

  private void progressions() {
    Consumer<String> line =
        name -> out.printf("%-22s  %s%n", name, Progressions.in("progression", name, null));
    Progressions.names().forEach(line);
  }

  private void plans() {
    Arrays.stream(Rung.values())
        .forEach(rung -> out.printf("%-6s  %s%n", rung.number(), rung.plainName()));
  }
}

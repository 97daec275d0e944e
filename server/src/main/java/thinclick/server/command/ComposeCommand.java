package thinclick.server.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.server.dealing.Ability;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Pages;
import thinclick.server.engraving.Paper;
import thinclick.server.export.MidiFiles;
import thinclick.server.export.MidiScore;
import thinclick.server.export.MusicXmlFiles;
import thinclick.server.export.PdfFiles;
import thinclick.server.export.SvgFiles;
import thinclick.server.folder.MaterialFolder;
import thinclick.server.lesson.Timetable;
import thinclick.server.material.Composition;
import thinclick.server.material.FigureMeasures;
import thinclick.server.material.LessonClock;
import thinclick.server.material.PartWriter;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.words.PartText;
import thinclick.server.words.SheetWords;

/** {@code compose}: from a drill and some wishes to parts on paper, in files or in the terminal. */
@Command(
    name = "compose",
    mixinStandardHelpOptions = true,
    description = "Writes and deals what is rehearsed, and prints the parts.")
final class ComposeCommand implements Callable<Integer> {
  private static final int COUNT_IN_BARS = 2;
  private static final List<Ability> LEVELS =
      List.of(Ability.EASIER, Ability.AS_WRITTEN, Ability.HARDER);
  private static final List<String> CIRCLE =
      List.of("C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G");

  @Spec private @Nullable CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "DRILL",
      description = "A drill's title, in any case and with hyphens for spaces, or a drill file.")
  private @Nullable String drill;

  @Option(
      names = "--list",
      arity = "0..1",
      fallbackValue = "drills",
      paramLabel = "WHAT",
      description = "Lists drills, lessons, scales, progressions, instruments, plans or deals.")
  private @Nullable String list;

  @Option(
      names = "--folder",
      paramLabel = "FOLDER",
      description = "A folder of your own *.drill.json and *.lesson.json files.")
  private @Nullable Path folder;

  @Option(
      names = "--lesson",
      paramLabel = "TITLE",
      description = "Prints a lesson's timetable instead of a drill.")
  private @Nullable String lesson;

  @Option(
      names = "--minutes",
      paramLabel = "N",
      description = "Fits the lesson to a class hour of so many minutes.")
  private @Nullable Integer minutes;

  @Option(
      names = "--script",
      description = "With the lesson, all that is said and done round each take.")
  private boolean script;

  @Mixin private ComposeMaterial wishes = new ComposeMaterial();

  @Option(names = "--chairs", paramLabel = "N", description = "How many chairs, 1 to 24.")
  private @Nullable Integer chairs;

  @Option(
      names = "--mixed",
      description = "Three levels of the same cycle: easier, as written, harder, in turn.")
  private boolean mixed;

  @Option(names = "--all-keys", description = "The part in all twelve keys on one handout.")
  private boolean allKeys;

  @Option(names = "--paper", paramLabel = "A4|Letter", description = "A4 if left out.")
  private String paper = "A4";

  @Option(names = "--cut", paramLabel = "beats|half-bars", description = "Where ties show beats.")
  private String cut = "half bars";

  @Option(names = "--text", description = "Prints the parts as counted syllables and beats.")
  private boolean text;

  @Option(
      names = "--measures",
      description = "Prints how syncopated each chair's rhythm is, by every published measure.")
  private boolean measures;

  @Option(names = "--musicxml", paramLabel = "FILE", description = "Writes a MusicXML 4.0 score.")
  private @Nullable Path musicxml;

  @Option(names = "--midi", paramLabel = "FILE", description = "Writes a Standard MIDI File.")
  private @Nullable Path midi;

  @Option(names = "--pdf", paramLabel = "FILE", description = "Writes the pages as PDF.")
  private @Nullable Path pdf;

  @Option(names = "--svg", paramLabel = "FILE", description = "Writes the pages as SVG.")
  private @Nullable Path svg;

  @Option(names = "--drill", paramLabel = "FILE", description = "Writes the drill as JSON.")
  private @Nullable Path drillFile;

  @Mixin private LanguageOption language = new LanguageOption();

  @Option(names = "--replace", description = "Write over files that are there.")
  private boolean replace;

  @Override
  public Integer call() {
    PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
    MaterialFolder material =
        folder == null ? MaterialFolder.stockOnly() : MaterialFolder.read(folder);
    if (list != null) {
      new ComposeList(material, out).print(list);
    } else if (lesson != null) {
      timetable(material, out);
    } else if (minutes != null || script) {
      throw new BadInput(
          minutes != null ? "--minutes" : "--script",
          "expected only with --lesson, found it without");
    } else {
      compose(material, out);
    }
    out.flush();
    return 0;
  }

  private void timetable(MaterialFolder material, PrintWriter out) {
    files()
        .values()
        .forEach(
            kind -> {
              throw new BadInput("--" + kind, "expected only without --lesson, found it with");
            });
    Lesson found = material.lesson(Objects.requireNonNull(lesson));
    if (minutes != null) {
      Check.range("--minutes", minutes.longValue(), 1, 240);
      found = LessonClock.fit(found, minutes, material::drill);
    }
    Timetable.lines(found, material::drill, script, language.locale()).forEach(out::println);
  }

  private void compose(MaterialFolder material, PrintWriter out) {
    Map<Path, String> files = files();
    files.keySet().forEach(file -> OutputFile.check(file, replace));
    Drill composed = wishes.drill(drill, material);
    Dealing dealing = deal(composed);
    List<WrittenPart> parts = parts(dealing, composed.tempo().start());
    List<List<WrittenPart>> keys = allKeys ? allKeys(dealing, composed, parts) : List.of();
    Map<Path, byte[]> contents = new LinkedHashMap<>();
    files.forEach((file, kind) -> contents.put(file, content(kind, composed, parts, keys)));
    contents.forEach((file, bytes) -> OutputFile.write(file, bytes, replace));
    if (measures) {
      measures(dealing.dealt(), out);
    }
    if (text || (files.isEmpty() && !measures)) {
      List<WrittenPart> printed =
          keys.isEmpty() ? parts : keys.stream().flatMap(List::stream).toList();
      printed.forEach(
          part -> {
            PartText.lines(part).forEach(out::println);
            out.println();
          });
    }
    files.keySet().forEach(file -> out.println("Wrote " + file));
  }

  private static void measures(Drill dealt, PrintWriter out) {
    for (Drill.Chair chair : dealt.chairs()) {
      out.printf("%s, %s, level %d%n", dealt.title(), chair.chair(), dealt.level());
      FigureMeasures.of(dealt, chair)
          .forEach(one -> out.printf("  %-52s %s (%s)%n", one.name(), one.value(), one.source()));
    }
  }

  /** The files asked for and what each is to hold. */
  private Map<Path, String> files() {
    Map<Path, String> files = new LinkedHashMap<>();
    put(files, musicxml, "musicxml");
    put(files, midi, "midi");
    put(files, pdf, "pdf");
    put(files, svg, "svg");
    put(files, drillFile, "drill");
    if (allKeys && (musicxml != null || midi != null)) {
      throw new BadInput(
          "--all-keys",
          "expected with --pdf, --svg or --text, found "
              + (musicxml != null ? "--musicxml" : "--midi"));
    }
    return files;
  }

  private static void put(Map<Path, String> files, @Nullable Path file, String kind) {
    if (file != null && files.putIfAbsent(file, kind) != null) {
      throw new BadInput("--" + kind, "expected a file of its own, found " + file + " again");
    }
  }

  /** A chair's name stands for its player, at the head of a page and of a sentence. */
  private static String capital(String chair) {
    int first = chair.offsetByCodePoints(0, 1);
    return chair.substring(0, first).toUpperCase(Locale.ROOT) + chair.substring(first);
  }

  private Dealing deal(Drill composed) {
    int count = chairs == null ? composed.chairs().size() : chairs;
    Check.range("--chairs", count, 1L, Dealer.MOST_PLAYERS);
    List<String> players = new ArrayList<>();
    Map<String, Ability> abilities = new LinkedHashMap<>();
    for (int i = 0; i < count; i++) {
      boolean named =
          i < composed.chairs().size() && !composed.chairs().get(i).chair().matches("\\d+");
      String numbered = SheetWords.in(language.locale()).chair(i + 1);
      String name = named ? capital(composed.chairs().get(i).chair()) : numbered;
      players.add(players.contains(name) ? numbered : name);
      if (mixed) {
        abilities.put(players.get(i), LEVELS.get(i % LEVELS.size()));
      }
    }
    return Dealer.deal(
        composed,
        players,
        composed.deal().seed(),
        composed.tempo().start(),
        composed.stages(),
        abilities);
  }

  private List<WrittenPart> parts(Dealing dealing, double tempo) {
    List<Instrument> instruments = wishes.instruments();
    List<WrittenPart> parts = new ArrayList<>();
    for (int i = 0; i < dealing.dealt().chairs().size(); i++) {
      Drill.Chair chair = dealing.dealt().chairs().get(i);
      if (!instruments.isEmpty()) {
        chair = Composition.on(chair, instruments.get(i % instruments.size()));
      }
      parts.add(written(dealing, chair, tempo, i));
    }
    return parts;
  }

  private WrittenPart written(Dealing dealing, Drill.Chair chair, double tempo, int at) {
    String says = dealing.sentences(language.speaker()).get(at);
    return PartWriter.write(dealing.dealt(), chair, tempo, says).in(language.locale());
  }

  /** Each part in twelve keys, down the circle of fifths from its own. */
  private List<List<WrittenPart>> allKeys(
      Dealing dealing, Drill composed, List<WrittenPart> parts) {
    List<List<WrittenPart>> all = new ArrayList<>();
    List<Instrument> instruments = wishes.instruments();
    for (int i = 0; i < parts.size(); i++) {
      Drill.Chair chair = dealing.dealt().chairs().get(i);
      @Nullable Line line = chair.line();
      @Nullable Key own = parts.get(i).concertKey();
      if (line == null || own == null) {
        throw new BadInput(
            "--all-keys",
            "expected pitches: --scale or --progression and an instrument that has them, found"
                + " rhythm alone");
      }
      Instrument on =
          instruments.isEmpty()
              ? parts.get(i).instrument()
              : instruments.get(i % instruments.size());
      List<WrittenPart> keys = new ArrayList<>();
      for (String tonic : circleFrom(line, own)) {
        Drill.Chair inKey = Composition.on(chair.edited().line(moved(line, tonic)).chair(), on);
        keys.add(written(dealing, inKey, composed.tempo().start(), i));
      }
      all.add(keys);
    }
    return all;
  }

  private static List<String> circleFrom(Line line, Key own) {
    int pitchClass =
        line.scale() != null && line.key() != null
            ? Key.tonicOf("key", line.key()).pitchClass()
            : own.tonic().pitchClass();
    int first = 0;
    while (Key.tonicOf("key", CIRCLE.get(first)).pitchClass() != pitchClass) {
      first++;
    }
    List<String> circle = new ArrayList<>(CIRCLE.subList(first, CIRCLE.size()));
    circle.addAll(CIRCLE.subList(0, first));
    return circle;
  }

  private static Line moved(Line line, String tonic) {
    boolean minor = line.progression() != null && Progressions.minor(line.progression());
    return new Line(
        minor ? Key.readable(Key.tonicOf("key", tonic), true).toString() : tonic,
        line.scale(),
        line.pattern(),
        line.direction(),
        line.progression(),
        line.between());
  }

  private byte[] content(
      String kind, Drill composed, List<WrittenPart> parts, List<List<WrittenPart>> keys) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      switch (kind) {
        case "musicxml" -> MusicXmlFiles.write(parts, bytes);
        case "midi" -> MidiFiles.write(MidiScore.of(parts, COUNT_IN_BARS), bytes);
        case "pdf" ->
            PdfFiles.write(pages(parts, keys), composed.title(), language.locale(), bytes);
        case "svg" ->
            SvgFiles.write(pages(parts, keys), composed.title(), language.locale(), bytes);
        default -> bytes.writeBytes(FileCodec.write(composed));
      }
    } catch (IOException problem) {
      throw new BadInput("--" + kind, "expected to make it, found " + problem.getMessage());
    }
    return bytes.toByteArray();
  }

  private List<Page> pages(List<WrittenPart> parts, List<List<WrittenPart>> keys) {
    Paper on = Paper.parse(paper);
    Cut at = Typed.word("--cut", cut, Map.of("beats", Cut.BEATS, "half bars", Cut.HALF_BARS));
    if (keys.isEmpty()) {
      return Pages.parts(parts, on, at);
    }
    return keys.stream().flatMap(part -> Pages.handout(part, on, at).stream()).toList();
  }
}

package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.FileCodec;
import thinclick.server.host.ClassBook;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Season;
import thinclick.server.words.Speaker;

/** {@code class}: the classes that a host keeps, also while it is hosting. */
@Command(
    name = "class",
    mixinStandardHelpOptions = true,
    description = {
      "Keeps classes by nickname and chair.",
      "Puts wrong names and seats right, drops spoilt takes, and carries a season to another"
          + " computer. What a class has played: history --class."
    })
final class ClassCommand implements Runnable {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT).withZone(ZoneId.systemDefault());

  @Mixin private DatabaseOption database = new DatabaseOption();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  @Command(
      name = "list",
      mixinStandardHelpOptions = true,
      description = "Prints a line for every class.")
  void list() {
    with(
        book -> {
          for (ClassBook.Line one : book.classes()) {
            Integer months = one.list().keepMonths();
            say(
                "%s  %s in the list  %s  last %s  %s",
                one.list().title(),
                Counted.of(one.list().members().size()),
                Counted.of(one.takes(), "take"),
                one.last() == null ? "never" : WHEN.format(one.last()),
                months == null
                    ? "kept as long as usual"
                    : months == 0 ? "kept for ever" : "kept for " + Counted.of(months, "month"));
          }
        });
  }

  @Command(
      name = "show",
      mixinStandardHelpOptions = true,
      description = "Prints who is in a class, and its takes.")
  void show(
      @Parameters(paramLabel = "CLASS", description = "Its title, in any case.") String title) {
    with(
        book -> {
          Season season = book.season(title);
          season
              .pupils()
              .forEach(
                  pupil ->
                      say(
                          "chair %s  %s  %s",
                          pupil.chair() == null ? "-" : pupil.chair(),
                          pupil.name(),
                          pupil.instrument() == null ? "" : pupil.instrument()));
          for (ClassTake take : season.takes()) {
            say(
                "%s  %s  %s  %s",
                take.entry().id(),
                WHEN.format(take.entry().begunAt()),
                take.entry().key().title(),
                String.join(", ", take.seats().stream().map(ClassTake.Seat::player).toList()));
          }
        });
  }

  @Command(
      name = "add",
      mixinStandardHelpOptions = true,
      description = "Writes somebody into a class, made where it is missing.")
  void add(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "NAME", description = "The nickname.") String name,
      @Option(names = "--chair", paramLabel = "N", description = "Where they usually sit, from 1.")
          @Nullable Integer chair,
      @Option(names = "--instrument", paramLabel = "NAME", description = "What they usually play.")
          @Nullable String instrument) {
    try (ClassBook book = database.classes()) {
      book.write(title, name, chair, instrument);
    }
  }

  @Command(
      name = "rename",
      mixinStandardHelpOptions = true,
      description = "Puts a wrong name right, in the list and in every take.")
  void rename(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "OLD", description = "The name so far, in any case.") String from,
      @Parameters(paramLabel = "NEW", description = "The name from now on.") String to,
      @Option(names = "--take", paramLabel = "ID", description = "In this take alone.")
          @Nullable String take) {
    with(
        book -> {
          int places = book.rename(title, from, to, take);
          say("%s is %s now, in %s.", from, to, Counted.of(places, "place"));
          int rooms = take == null ? book.openRoomsSaying(title, from) : 0;
          if (rooms > 0) {
            say("%s", StillSaid.says(rooms, from, to));
          }
        });
  }

  @Command(
      name = "seat",
      mixinStandardHelpOptions = true,
      description = "Sets where somebody sits from now on.")
  void seat(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "NAME", description = "The nickname.") String name,
      @Parameters(paramLabel = "CHAIR", description = "From 1.") int chair) {
    with(book -> book.seat(title, name, chair));
  }

  @Command(
      name = "swap",
      mixinStandardHelpOptions = true,
      description = "Puts right a take in which two sat in each other's seat.")
  void swap(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "TAKE", description = "As class show prints it.") String take,
      @Parameters(paramLabel = "NAME", description = "One of the two.") String one,
      @Parameters(paramLabel = "OTHER", description = "The other.") String other) {
    with(book -> book.swap(title, take, one, other));
  }

  @Command(
      name = "drop-take",
      mixinStandardHelpOptions = true,
      description = "Drops a spoilt take with all that belongs to it, from backups too.")
  void drop(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "TAKE", description = "As class show prints it.") String take) {
    with(
        book -> {
          book.drop(title, take);
          say("%s", TakeCommand.dropped(take));
        });
  }

  @Command(
      name = "room",
      mixinStandardHelpOptions = true,
      description = "Gives an open room, and the takes made in it, to a class.")
  void room(
      @Parameters(paramLabel = "CLASS", description = "Its title; made where it is missing.")
          String title,
      @Parameters(paramLabel = "WORD", description = "The room's word.") String word) {
    with(book -> book.hold(title, word));
  }

  @Command(
      name = "keep",
      mixinStandardHelpOptions = true,
      description = "Sets how long a class's takes are kept.")
  void keep(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "MONTHS", description = "0 for ever.") int months) {
    with(book -> book.keep(title, months));
  }

  @Command(
      name = "save",
      mixinStandardHelpOptions = true,
      description = "Saves a class with all its takes to one file.")
  void save(
      @Parameters(paramLabel = "CLASS", description = "Its title.") String title,
      @Parameters(paramLabel = "FILE", description = "Season file to write.") Path file,
      @Option(names = "--replace", description = "Write over a file that is there.")
          boolean replace) {
    OutputFile.check(file, replace);
    with(book -> OutputFile.write(file, FileCodec.writeSeason(book.save(title)), replace));
  }

  @Command(
      name = "open",
      mixinStandardHelpOptions = true,
      description = "Takes a season in; a second time changes nothing.")
  void open(@Parameters(paramLabel = "FILE", description = "Season file to read.") Path file) {
    try (ClassBook book = database.classes()) {
      ClassBook.Opened opened = InputFile.read(file, book::open);
      say(
          "%s: %s taken in, %s here already, %s written into the list.",
          opened.title(),
          Counted.of(opened.takes(), "take"),
          opened.there() == 0 ? "none" : Counted.of(opened.there()),
          Counted.of(opened.members(), "name"));
      opened.conflicts().forEach(conflict -> say("%s", conflict.say(Speaker.english())));
      List<String> elsewhere = opened.elsewhere();
      if (!elsewhere.isEmpty()) {
        say("Left in another class here: %s.", String.join(", ", elsewhere));
      }
    }
  }

  private void say(String format, Object... values) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(String.format(Locale.ROOT, format, values).stripTrailing());
    out.flush();
  }

  private void with(Consumer<ClassBook> doing) {
    database.check();
    try (ClassBook book = database.classes()) {
      doing.accept(book);
    }
  }
}
